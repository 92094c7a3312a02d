// What the service says of a certificate, as it is shown to whoever holds it.

import { html, nothing } from '/_static/lit-html/lit-html.js';
import { MARKS } from '../page/marks.js';
import { factList, time } from '../page/words.js';

/** How each state looks: green for the one that may be relied on, and for no other. */
const LOOKS = /** @type {const} */ ({
  current: 'accepted', 'in-question': 'incomplete', superseded: 'incomplete', withdrawn: 'rejected', altered: 'rejected', unknown: 'rejected',
});

/** @param {Answer.Verification} found */
const word = ({ genuine, state, stateText }) => {
  if (state === 'current') return 'Genuine and current';
  return genuine ? `Genuine, but ${stateText}` : `Not genuine: ${stateText}`;
};

/**
 * @param {string} id
 * @param {string[]} sentences
 */
const list = (id, sentences) => (sentences.length
  ? html`<ul id=${id} class="shortfalls">${sentences.map((sentence) => html`<li>${sentence}</li>`)}</ul>` : nothing);

/**
 * The reels of a collective certificate, each with its own.
 *
 * @param {Answer.Verification} found
 */
const named = ({ certificates }) => certificates
  .map((one) => `${one.reel} (${one.product}): certificate ${one.number}, issue ${one.issue}, ${one.stateText}`).join('; ');

/**
 * @param {Answer.Verification} found
 * @param {boolean} withFile whether a file was compared too
 */
export function foundAnswer(found, withFile) {
  const look = LOOKS[found.state];
  return html`
    <div id="answer" class="verdict ${look}">
      <svg viewBox="0 0 48 48" width="96" height="96" aria-hidden="true">${MARKS[look]}</svg>
      <div>
        <p id="answer-word" class="verdict-word">${word(found)}</p>
        <p id="answer-line" class="verdict-line">${found.stateSentence}</p>
        ${list('answer-reasons', found.reasons)}
        ${list('answer-differences', found.differences)}
      </div>
    </div>
    <dl id="answer-facts" class="facts">${factList([
    ['Number', found.number], ['Issue', found.issue && String(found.issue)], ['Issued', found.issued && time(found.issued)],
    ['Reel', found.reel], ['Product', found.product], ['Reels', named(found)],
    ['Compared', withFile ? 'the file itself, byte for byte' : 'number only; drop the PDF to compare the file'],
  ])}</dl>`;
}

/**
 * @param {string} number
 * @param {string} sentence what the service says
 * @returns {Answer.Verification}
 */
export const unknownNumber = (number, sentence) => ({
  number, genuine: false, current: false, state: 'unknown', stateText: 'unknown', stateSentence: sentence, reasons: [], differences: [],
  issue: null, issued: null, reel: null, product: null, certificates: [], matches: null,
});
