// What else a rejected reel could be.

import { html, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { notice, sentence } from '../page/notices.js';
import { getJson } from '../page/session.js';

/**
 * @param {Answer.Record} record
 * @param {() => boolean} isShown whether the record still stands on the page
 */
export async function showAlternatives(record, isShown) {
  show('alternatives-section', false);
  if (record.verdict !== 'rejected') return;
  try {
    /** @type {Answer.Alternatives} */
    const { adviceLines } = await getJson(path('records', record.id, 'alternatives'));
    if (!isShown()) return;
    render(adviceLines.map((line) => html`<li>${line}</li>`), byId('alternatives'));
    show('alternatives-section', true);
  } catch (fault) {
    if (isShown()) notice(`What else this reel could be cannot be shown. ${sentence(fault)}`);
  }
}
