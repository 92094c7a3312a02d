// The certificates over several reels of an order.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { getJson } from '../page/session.js';

/** @param {Answer.Collective} one */
const line = (one) => html`<li>
  <a href=${one.pdf} download="${one.number}.pdf">${one.number}</a>
  <small>${one.certificates.length} ${one.certificates.length === 1 ? 'reel' : 'reels'}, ${one.stateText}</small>
  ${one.reasons.length ? html`<ul>${one.reasons.map((reason) => html`<li>${reason}</li>`)}</ul>` : nothing}
</li>`;

/** @param {Answer.Collective[]} collectives */
export function showCollectives(collectives) {
  render(collectives.map(line), byId('collectives-list'));
  show('collectives', collectives.length > 0);
}

/**
 * Asks for one certificate over all reels of an order.
 *
 * @param {string} order
 * @returns {Promise<Answer.Collective>}
 */
export const issueCollective = (order) => getJson(path('orders', order, 'collective-certificate'), { method: 'POST' });
