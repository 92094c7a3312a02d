// The start page: the reels tested last.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { getJson } from '../page/session.js';
import { time } from '../page/words.js';

const SHOWN = 20;

/** @type {Record<string, string>} */
const SIGNS = { accepted: '✓', conditional: '(✓)', rejected: '✕', incomplete: '△' };

/**
 * The address of a reel within the page.
 *
 * @param {string} reel
 */
export const reelAddress = (reel) => `#/reel/${encodeURIComponent(reel)}`;

/**
 * What a list says of a reel: its verdict, that it waits for an engineer or a concession, and that it is held, whatever the verdict.
 *
 * @param {Answer.ReelLine} line
 */
export const lineVerdict = (line) => [line.verdictText || 'not tested', line.awaitsEngineer ? 'waits for an engineer' : '',
  line.concessionUnfinished ? 'concession not done' : '', line.held ? 'on hold' : ''].filter(Boolean).join(', ');

/** @param {Answer.ReelLine} line */
const row = (line) => html`
  <tr>
    <td><a href=${reelAddress(line.reel)}>${line.reel}</a></td>
    <td class="beside">${line.product ?? ''}</td>
    <td class="beside">${line.order ?? ''}</td>
    <td class="beside">${line.customer ?? ''}</td>
    <td>${line.finished ? time(line.finished) : nothing}</td>
    <td class="tag ${line.held || line.awaitsEngineer || line.concessionUnfinished ? 'held' : line.look ?? ''}">${SIGNS[line.look ?? ''] ?? ''} ${lineVerdict(line)}</td>
  </tr>`;

export async function showStart() {
  document.title = 'Reelproof';
  show('reel', false);
  show('start', true);
  /** @type {{ reels: Answer.ReelLine[] }} */
  const { reels } = await getJson(`${path('reels')}?limit=${SHOWN}&query=`);
  render(reels.map(row), byId('recent'));
}
