// The concession of a reel that its test did not accept: how it stands, and asking for one.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { sentence } from '../page/notices.js';
import { getJson, may, sendJson } from '../page/session.js';
import { time } from '../page/words.js';
import { shown } from './shown.js';
import { showVerdict } from './verdict.js';

/** @param {Answer.Concession} concession */
const decision = (concession) => (concession.decidedBy
  ? html`<p class="hint">${concession.state === 'approved' ? 'Approved' : 'Refused'} by ${concession.decidedBy},
    ${time(concession.decided ?? '')}: ${concession.decisionReason ?? ''}</p>` : nothing);

/** @param {Answer.Concession} concession */
const line = (concession) => html`
  <li><strong>${concession.title}</strong>, ${concession.state}: ${concession.reason}
    <p class="hint">Concession ${concession.id}, asked for by ${concession.requestedBy}, ${time(concession.requested)}</p>
    ${decision(concession)}
    ${concession.allows ? html`<p>${concession.allows}</p>` : nothing}
    ${concession.state === 'open' ? html`<p>${concession.effect}
      <a href="/approvals.html">A quality manager decides.</a></p>` : nothing}</li>`;

/**
 * @param {Answer.Reel} reel
 * @param {Answer.Concession} concession
 */
function certificate(reel, concession) {
  if (concession.kind !== 'use-as-is' || concession.state !== 'approved') return nothing;
  const issued = reel.certificates.find((one) => one.record === concession.record);
  if (issued) return html`<p>Certificate ${issued.number} names this concession.</p>`;
  return may(shown.who, 'issue')
    ? html`<p><button type="button" id="issue-conceded" @click=${() => issue(reel)}>Issue certificate, by concession</button></p>` : nothing;
}

/** @param {Answer.Reel} reel */
async function issue(reel) {
  const record = reel.records[0];
  try {
    const certified = await getJson(path('reels', reel.reel, 'certificates'), { method: 'POST' });
    reel.certificates = [{ record: record.id, ...certified }, ...reel.certificates];
    if (shown.reel === reel && shown.record === record) showVerdict({ reel, record, who: shown.who });
    await showConcession(reel);
  } catch (fault) {
    await showConcession(reel, sentence(fault));
  }
}

/**
 * @param {Answer.Reel} reel
 * @param {string} [fault] why nothing came of what was pressed just now
 */
export async function showConcession(reel, fault) {
  show('concession', false);
  const [record] = reel.records;
  if (!record) return;
  /** @type {{ concessions: Answer.Concession[] }} */
  const { concessions } = await getJson(`${path('concessions')}?reel=${encodeURIComponent(reel.reel)}`);
  if (shown.reel !== reel) return;
  const isFree = concessions.filter((one) => one.record === record.id).every((one) => one.state === 'refused');
  const mayAsk = isFree && (record.look === 'rejected' || record.look === 'conditional') && may(shown.who, 'ask-concession');
  if (concessions.length === 0 && !mayAsk && !fault) return;
  render(html`
    <h2>Concession</h2>
    ${fault ? html`<p role="alert">${fault}</p>` : nothing}
    <ul>${concessions.map(line)}</ul>
    ${concessions.filter((one) => one.record === record.id).map((one) => certificate(reel, one))}
    ${mayAsk ? form(reel) : nothing}`, byId('concession'));
  show('concession', true);
}

/** @param {Answer.Reel} reel */
const form = (reel) => html`
  <form class="fields" @submit=${(/** @type {SubmitEvent} */ event) => ask(event, reel)}>
    <label for="concession-kind">Ask a quality manager to</label>
    <select id="concession-kind" name="kind">
      <option value="use-as-is">use it as it is</option>
      <option value="regrade">regrade it to another product</option>
      <option value="shorten">shorten it</option>
    </select>
    <label for="concession-product">New product, of a regrade</label>
    <input id="concession-product" name="product" autocomplete="off" spellcheck="false">
    <label for="concession-length">New length in m, of a shortening</label>
    <input id="concession-length" name="length" type="number" min="0" step="any">
    <label for="concession-reason">Why</label>
    <input id="concession-reason" name="reason" autocomplete="off" required maxlength="1000">
    <button id="concession-ask">Ask</button>
  </form>`;

/**
 * @param {SubmitEvent} event
 * @param {Answer.Reel} reel
 */
async function ask(event, reel) {
  event.preventDefault();
  const sent = new FormData(/** @type {HTMLFormElement} */ (event.currentTarget));
  const product = String(sent.get('product') ?? '').trim();
  const metres = String(sent.get('length') ?? '');
  try {
    await sendJson('POST', path('reels', reel.reel, 'concessions'), {
      kind: sent.get('kind'),
      reason: sent.get('reason'),
      ...(product ? { product } : {}),
      ...(metres ? { length: { value: Number(metres), unit: 'm' } } : {}),
    });
    await showConcession(reel);
  } catch (fault) {
    await showConcession(reel, sentence(fault));
  }
}
