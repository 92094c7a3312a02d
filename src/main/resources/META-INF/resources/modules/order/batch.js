// How far the certificates of an order have come.

import { html, render } from '/_static/lit-html/lit-html.js';
import { byId, show } from '../page/dom.js';

/** Nothing of a batch is shown. */
export function hideBatch() {
  show('batch', false);
  show('not-issued', false);
  byId('batch-done').textContent = '';
}

/** @param {Answer.Batch['notIssued'][number]} one */
const line = ({ reel, reason }) => html`<li><a href="/#/reel/${encodeURIComponent(reel)}">${reel}</a>: ${reason}</li>`;

/** @param {Answer.Batch} batch */
export function showBatch(batch) {
  const progress = byId('batch-progress', HTMLProgressElement);
  progress.max = Math.max(1, batch.reels);
  progress.value = batch.done;
  byId('batch-sentence').textContent = batch.finished ? '' : batch.sentence;
  // A live region that spoke at each reel would talk without end: it says the end alone.
  byId('batch-done').textContent = batch.finished ? batch.sentence : '';
  progress.hidden = batch.finished;
  show('batch', true);
  render(batch.notIssued.map(line), byId('not-issued-reels'));
  show('not-issued', batch.notIssued.length > 0);
}
