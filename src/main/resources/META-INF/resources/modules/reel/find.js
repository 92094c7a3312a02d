// Finding a reel: by scanning or typing, with the hits below the field.

import { html, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, dialog, field, onSubmit, show } from '../page/dom.js';
import { notice, noticeFault } from '../page/notices.js';
import { isStatus } from '../page/requests.js';
import { getJson } from '../page/session.js';
import { MOST_HITS, endsScan, exactHit, isScanned, nextHit, takesText } from './hits.js';
import { turns } from './shown.js';
import { lineVerdict } from './start.js';

const NOT_FOUND = 404;
const TYPING_PAUSE_MS = 150;

const searches = turns();

/** @type {Answer.ReelLine[]} */
let hits = [];
let selected = -1;
let typing = 0;
let lastKey = -Infinity;

/** @type {(reel: string) => void} */
let open = () => {};

/**
 * @param {Answer.ReelLine} hit
 * @param {number} index
 */
const item = (hit, index) => html`
  <li role="option" id="hit-${index}" aria-selected=${index === selected}
    @mousedown=${(/** @type {MouseEvent} */ event) => { event.preventDefault(); choose(hit.reel); }}>
    <strong>${hit.reel}</strong>
    <span class="what">${[hit.product, hit.order, hit.customer].filter(Boolean).join(' · ')}</span>
    <span class="what verdict-of-hit">${lineVerdict(hit)}</span>
  </li>`;

/** @param {number} index -1 for none */
function select(index) {
  selected = index;
  render(hits.map(item), byId('hits'));
  if (index >= 0) {
    field('query').setAttribute('aria-activedescendant', `hit-${index}`);
    byId(`hit-${index}`).scrollIntoView({ block: 'nearest' });
  } else {
    field('query').removeAttribute('aria-activedescendant');
  }
}

/**
 * @param {Answer.ReelLine[]} found
 * @param {string} [note]
 */
function showHits(found, note = '') {
  hits = found;
  byId('hits-note').textContent = note;
  show('found', hits.length > 0);
  field('query').setAttribute('aria-expanded', String(hits.length > 0));
  select(-1);
}

/**
 * The reels that a text finds, with the text that was looked for: that without what a scanner puts around it.
 *
 * @param {string} text as scanned or typed
 * @returns {Promise<{ query: string, reels: Answer.ReelLine[] }>}
 */
const find = (text) => getJson(`${path('reels')}?limit=${MOST_HITS}&query=${encodeURIComponent(text)}`);

/**
 * The reel of exactly that number; null when there is none.
 *
 * @param {string} text
 * @param {Answer.ReelLine[]} found
 * @returns {Promise<{ reel: string } | null>}
 */
async function exactly(text, found) {
  const exact = exactHit(found, text);
  if (exact || found.length < MOST_HITS) return exact;
  return getJson(path('reels', text)).catch((fault) => {
    if (isStatus(fault, NOT_FOUND)) return null;
    throw fault;
  });
}

/** @param {string} reel */
function choose(reel) {
  clearTimeout(typing);
  searches.next();
  notice('');
  showHits([]);
  field('query').value = '';
  open(reel);
}

function typed() {
  clearTimeout(typing);
  select(-1);
  const text = field('query').value.trim();
  if (!text) {
    searches.next();
    showHits([]);
    return;
  }
  typing = window.setTimeout(async () => {
    const isNewest = searches.next();
    try {
      const { reels } = await find(text);
      if (isNewest()) showHits(reels);
    } catch (fault) {
      noticeFault(fault);
    }
  }, TYPING_PAUSE_MS);
}

/** @param {KeyboardEvent} event */
function moved(event) {
  if (event.key === 'Escape') showHits([]);
  const sinceLast = event.timeStamp - lastKey;
  lastKey = event.timeStamp;
  if (endsScan(event, sinceLast) && field('query').value.trim()) {
    event.preventDefault();
    submitted();
    return;
  }
  const next = nextHit(event.key, selected, hits.length);
  if (next === selected) return;
  event.preventDefault();
  select(next);
}

async function submitted() {
  clearTimeout(typing);
  notice('');
  const text = field('query').value.trim();
  if (!text) return;
  if (selected >= 0) {
    choose(hits[selected].reel);
    return;
  }
  const isNewest = searches.next();
  try {
    const { query, reels } = await find(text);
    const exact = isNewest() ? await exactly(query, reels) : null;
    if (!isNewest()) return;
    if (exact) {
      choose(exact.reel);
      return;
    }
    showHits(reels, `No reel has exactly the number “${query}”. Choose with the arrow keys and Enter, or scan again.`);
    if (!reels.length) notice(`No reel, order or customer matches “${query}”. Check the number, or register the reel first.`);
  } catch (fault) {
    noticeFault(fault);
  }
  field('query').select();
}

/**
 * A scanner types wherever the focus is: its characters belong in the search box.
 *
 * @param {KeyboardEvent} event
 */
function scanned(event) {
  if (!isScanned(event) || takesText(event.target)) return;
  if (dialog('explain').open) dialog('explain').close();
  field('query').value = '';
  field('query').focus();
}

/** @param {(reel: string) => void} whenChosen opens a reel */
export function startFinding(whenChosen) {
  open = whenChosen;
  field('query').addEventListener('input', typed);
  field('query').addEventListener('keydown', moved);
  onSubmit('search', submitted);
  document.addEventListener('keydown', scanned);
  document.addEventListener('click', ({ target }) => {
    if (target instanceof Node && !byId('search').contains(target)) showHits([]);
  });
}
