// Finding a reel, an order, a certificate, a customer or a product: by scanning or typing, with the hits below the field.

import { html, render } from '/_static/lit-html/lit-html.js';
import { orderAddress, path } from '../page/addresses.js';
import { byId, field, onSubmit, show } from '../page/dom.js';
import { notice, noticeFault } from '../page/notices.js';
import { getJson } from '../page/session.js';
import { MOST_HITS, endsScan, exactHit, isScanned, nextHit, takesText } from './hits.js';
import { turns } from './shown.js';
import { lineVerdict } from './start.js';

const TYPING_PAUSE_MS = 150;

const searches = turns();

/** @type {Answer.Hit[]} */
let hits = [];
let selected = -1;
let typing = 0;
let lastKey = -Infinity;

/** @type {(reel: string) => void} */
let open = () => {};

/**
 * What stands beside a name.
 *
 * @param {Answer.Hit} hit
 */
function facts({ reel, certificate, collective }) {
  if (reel) return [reel.product, reel.order, reel.customer];
  if (certificate) return [`reel ${certificate.reel}`, certificate.order, certificate.customer];
  if (collective) return [`${collective.certificates.length} reels`, collective.order, collective.customer];
  return [];
}

/**
 * @param {Answer.Hit} hit
 * @param {number} index
 */
const item = (hit, index) => html`
  <li role="option" id="hit-${index}" aria-selected=${index === selected}
    @mousedown=${(/** @type {MouseEvent} */ event) => { event.preventDefault(); choose(hit); }}>
    <strong>${hit.kind === 'reel' ? '' : html`<span class="kind">${hit.kind} </span>`}${hit.name}</strong>
    <span class="what">${facts(hit).filter(Boolean).join(' · ')}</span>
    <span class="what verdict-of-hit">${hit.reel ? lineVerdict(hit.reel) : (hit.certificate ?? hit.collective)?.stateText ?? ''}</span>
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
 * @param {Answer.Hit[]} found
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
/**
 * What a text finds, the best first, with the text that was looked for: that without what a scanner puts around it.
 *
 * @param {string} text as scanned or typed
 * @returns {Promise<{ query: string, hits: Answer.Hit[] }>}
 */
const find = (text) => getJson(`${path('search')}?limit=${MOST_HITS}&q=${encodeURIComponent(text)}`);

/** @param {Answer.Hit} hit */
function choose(hit) {
  clearTimeout(typing);
  searches.next();
  notice('');
  showHits([]);
  if (hit.kind === 'customer' || hit.kind === 'product') {
    // They have no page: what belongs to them is found by their name.
    field('query').value = hit.name;
    list(hit.name);
    return;
  }
  field('query').value = '';
  if (hit.kind === 'order' || hit.collective) location.assign(orderAddress(hit.collective?.order ?? hit.name));
  else open(hit.certificate?.reel ?? hit.name);
}

/**
 * Shows what a text finds.
 *
 * @param {string} text
 */
async function list(text) {
  const isNewest = searches.next();
  try {
    const { hits: found } = await find(text);
    if (isNewest()) showHits(found);
  } catch (fault) {
    noticeFault(fault);
  }
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
  typing = window.setTimeout(() => list(text), TYPING_PAUSE_MS);
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
    choose(hits[selected]);
    return;
  }
  const isNewest = searches.next();
  try {
    const { query, hits: found } = await find(text);
    if (!isNewest()) return;
    const exact = exactHit(found, query);
    if (exact) {
      choose(exact);
      return;
    }
    showHits(found, `Nothing has exactly the number “${query}”. Choose with the arrow keys and Enter, or scan again.`);
    if (!found.length) notice(`No reel, order, certificate or customer matches “${query}”. Check the number, or register the reel first.`);
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
  document.querySelector('dialog')?.close();
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
