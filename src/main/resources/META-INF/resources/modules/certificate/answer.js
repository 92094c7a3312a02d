// What the service says of a certificate, in words for whoever holds it.

import { html } from '/_static/lit-html/lit-html.js';
import { MARKS } from '../page/marks.js';
import { factList, time } from '../page/words.js';

const ANSWERS = {
  current: { look: 'accepted', word: 'Genuine and current', line: 'This certificate was issued here and is the newest issue.' },
  sameFile: { look: 'accepted', word: 'Genuine and current',
    line: 'The file is, byte for byte, the certificate that was issued here, in its newest issue.' },
  replaced: { look: 'incomplete', word: 'Genuine, not current',
    line: 'This certificate was issued here, but a later issue has replaced it. Ask for the newest.' },
  otherFile: { look: 'rejected', word: 'Not the issued file',
    line: 'The number was issued here, but this file is not the file that was issued. Do not rely on it.' },
  unknown: { look: 'rejected', word: 'Not genuine',
    line: 'No certificate of this number was issued here. Compare the number with the paper; if it is right, do not rely on it.' },
};

/**
 * @param {Answer.Verification} found
 * @returns {keyof typeof ANSWERS}
 */
function kind({ matches, current }) {
  if (matches === false) return 'otherFile';
  if (!current) return 'replaced';
  return matches === true ? 'sameFile' : 'current';
}

/**
 * @param {keyof typeof ANSWERS} which
 * @param {[string, unknown][]} facts
 */
function answer(which, facts) {
  const { look, word, line } = ANSWERS[which];
  return html`
    <div id="answer" class="verdict ${look}">
      <svg viewBox="0 0 48 48" width="96" height="96" aria-hidden="true">${MARKS[look]}</svg>
      <div>
        <p id="answer-word" class="verdict-word">${word}</p>
        <p id="answer-line" class="verdict-line">${line}</p>
      </div>
    </div>
    <dl id="answer-facts" class="facts">${factList(facts)}</dl>`;
}

/** @param {string} number */
export const unknownAnswer = (number) => answer('unknown', [['Number', number]]);

/**
 * @param {Answer.Verification} found
 * @param {boolean} withFile whether a file was compared too
 */
export const foundAnswer = (found, withFile) => answer(kind(found), [
  ['Number', found.number], ['Issue', String(found.issue)], ['Issued', time(found.issued)], ['Reel', found.reel],
  ['Product', found.product], ['Compared', withFile ? 'number and file' : 'number only; drop the PDF to compare the file'],
]);
