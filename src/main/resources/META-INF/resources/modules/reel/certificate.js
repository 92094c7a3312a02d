// The certificate of an accepted reel: issued by whoever may, taken by everybody.

import { html, nothing } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { button, byId } from '../page/dom.js';
import { sentence } from '../page/notices.js';
import { getJson, may } from '../page/session.js';
import { acceptanceOf } from './acceptance.js';
import { isHeld } from './holds.js';
import { shown } from './shown.js';

/** @typedef {import('./verdict.js').Situation} Situation */

/**
 * Only a current certificate is offered as one; of another its state is said, with what speaks against it.
 *
 * @param {Answer.Certificate} certificate
 */
const link = ({ number, issue: issueNumber, pdf, state, stateText, stateSentence, reasons }) => (state === 'current'
  ? html`<a href=${pdf} id="certificate-link" download="${number}.pdf">Certificate ${number}${issueNumber > 1 ? `, issue ${issueNumber}` : nothing}</a>`
  : html`
    <p id="certificate-state"><strong>Certificate ${number}: ${stateText.toUpperCase()}.</strong> ${stateSentence}</p>
    <ul>${reasons.map((reason) => html`<li>${reason}</li>`)}</ul>`);

/**
 * @param {Situation} situation
 * @param {(situation: Situation) => void} showAgain
 */
async function issue(situation, showAgain) {
  const { reel, record } = situation;
  button('issue').disabled = true;
  try {
    const certificate = await getJson(path('reels', reel.reel, 'certificates'), { method: 'POST' });
    reel.certificates = [{ record: record.id, ...certificate }, ...reel.certificates];
    if (shown.record !== record) return;
    showAgain(situation);
    byId('certificate-link').focus();
  } catch (fault) {
    if (shown.record === record) showAgain({ ...situation, certificateFault: sentence(fault) });
  }
}

/**
 * What stands beside the verdict of the newest attempt.
 *
 * @param {Situation} situation
 * @param {(situation: Situation) => void} showAgain
 */
export function certificateOf(situation, showAgain) {
  const { reel, record, who, certificateFault } = situation;
  if (record.verdict !== 'accepted') {
    // A certificate of an earlier test may be in somebody's hands.
    const doubtful = reel.certificates.find((certificate) => certificate.state !== 'superseded');
    return doubtful ? link(doubtful) : nothing;
  }
  if (certificateFault) return html`<p role="alert">${certificateFault}</p>`;
  if (record.awaitsEngineer) return acceptanceOf(situation, showAgain);
  const issued = reel.certificates.find((certificate) => certificate.record === record.id);
  if (issued) return link(issued);
  if (reel.concessionSentence) return html`<p>${reel.concessionSentence}</p>`;
  if (isHeld(reel)) return html`<p>No certificate while the reel is on hold.</p>`;
  return may(who, 'issue')
    ? html`<button type="button" id="issue" @click=${() => issue(situation, showAgain)}>Issue certificate</button>`
    : html`<p>No certificate yet. Customer service or the quality manager issues it.</p>`;
}
