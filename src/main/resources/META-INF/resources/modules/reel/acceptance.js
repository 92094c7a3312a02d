// A pass after a failure, accepted by an engineer where the plant asks for it.

import { html } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { button, field } from '../page/dom.js';
import { sentence } from '../page/notices.js';
import { getJson, may } from '../page/session.js';
import { shown } from './shown.js';

/** @typedef {import('./verdict.js').Situation} Situation */

/**
 * @param {Situation} situation
 * @param {(situation: Situation) => void} showAgain
 */
async function accept(situation, showAgain) {
  const { reel, record } = situation;
  button('accept-retest').disabled = true;
  try {
    const accepted = await getJson(path('records', record.id, 'acceptance'), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ reason: field('accept-reason').value }),
    });
    Object.assign(record, accepted);
    if (shown.reel === reel && shown.record === record) showAgain({ ...situation, certificateFault: undefined });
  } catch (fault) {
    if (shown.record === record) showAgain({ ...situation, certificateFault: sentence(fault) });
  }
}

/**
 * What stands beside a verdict that counts only once an engineer has accepted it.
 *
 * @param {Situation} situation
 * @param {(situation: Situation) => void} showAgain
 */
export function acceptanceOf(situation, showAgain) {
  if (!may(situation.who, 'accept-retest')) {
    return html`<p id="awaits-engineer">No certificate until an engineer has accepted the retest.</p>`;
  }
  return html`
    <form id="acceptance" @submit=${(/** @type {SubmitEvent} */ event) => { event.preventDefault(); accept(situation, showAgain); }}>
      <label for="accept-reason">Why the retest may count</label>
      <input id="accept-reason" type="text" required maxlength="1000">
      <button type="submit" id="accept-retest">Accept the retest</button>
    </form>`;
}
