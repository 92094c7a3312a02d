// The banner that is read at arm's length.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { byId } from '../page/dom.js';
import { MARKS } from '../page/marks.js';
import { time } from '../page/words.js';
import { certificateOf } from './certificate.js';
import { isHeld } from './holds.js';

const MOST_SHORTFALLS = 3;

/**
 * @typedef {object} Situation
 * @property {Answer.Reel} reel
 * @property {Answer.Record} record the attempt shown
 * @property {Answer.Session | null} who
 * @property {boolean} [isTakenBefore] the file just sent had been taken before, and this is its record
 * @property {boolean} [isRefused] a file just sent was not taken, so that the verdict is that of an earlier one
 * @property {string} [certificateFault] why no certificate was issued just now
 */

/** @param {Situation} situation */
function olderLine({ reel, record, isRefused, isTakenBefore }) {
  const newest = reel.records[0];
  if (isRefused) return 'The file just sent was not taken. This is the verdict of an earlier one:';
  if (newest.id === record.id) return '';
  return `${isTakenBefore ? 'This very file was taken before. ' : ''}Older attempt ${record.attempt} of ${record.attempts}.`
    + ` The newest counts, and it is ${newest.verdictText.toUpperCase()}.`;
}

/**
 * What else there is to know of this test among the tests of its reel.
 *
 * @param {Answer.Record} record
 */
const amongTests = (record) => html`
  ${record.attempts > 1 ? html`<p id="attempt-summary" class="verdict-line"><strong>${record.attemptSummary}</strong></p>` : nothing}
  ${record.retestReason ? html`<p class="verdict-line">Tested again because: ${record.retestReason}</p>` : nothing}
  ${record.retestAcceptance ? html`<p id="retest-accepted" class="verdict-line">${record.retestAcceptance.sentence}</p>` : nothing}`;

/**
 * Why a reel that passed may not go, in few words; empty where it may, or did not pass.
 *
 * @param {Answer.Reel} reel
 * @param {Answer.Record} record
 */
function stop(reel, record) {
  if (record.verdict !== 'accepted') return '';
  if (isHeld(reel)) return ', on hold';
  if (record.awaitsEngineer) return ', waits for an engineer';
  return reel.concessionSentence ? ', concession not done' : '';
}

/**
 * By how much it fails and where: the first few.
 *
 * @param {Answer.Record} record
 */
function shortfallList({ findings }) {
  const all = findings.map((finding) => finding.shortfall).filter((shortfall) => shortfall !== null);
  const more = all.length - MOST_SHORTFALLS;
  return all.length ? html`
    <ul class="shortfalls">
      ${all.slice(0, MOST_SHORTFALLS).map((shortfall) => html`<li>${shortfall}</li>`)}
      ${more > 0 ? html`<li>and ${more} more</li>` : nothing}
    </ul>` : nothing;
}

/** @param {Situation} situation */
export function showVerdict(situation) {
  const { reel, record } = situation;
  const isNewest = reel.records[0].id === record.id;
  const older = olderLine(situation);
  // At arm's length a reel that is held, or whose certificate is in question, must not look like one that may go.
  const doubtful = isNewest && record.verdict === 'accepted' && !isHeld(reel)
    ? reel.certificates.find((certificate) => certificate.record === record.id && certificate.state === 'in-question') : undefined;
  const stopped = isNewest ? stop(reel, record) || (doubtful ? ', certificate in question' : '') : '';
  byId('verdict').className = ['verdict', stopped ? 'held' : record.verdict, record.look === 'conditional' ? 'conditional' : '',
    older ? 'older' : ''].filter(Boolean).join(' ');
  const line = (stopped && ((isHeld(reel) && reel.heldSentence) || (!record.awaitsEngineer && reel.concessionSentence)))
    || doubtful?.stateSentence || record.verdictSentence;
  render(html`
    <svg viewBox="0 0 48 48" width="96" height="96" aria-hidden="true">${MARKS[stopped ? 'incomplete' : record.look]}</svg>
    <div>
      <p id="older" class="older-line" ?hidden=${!older}>${older}</p>
      <p id="verdict-word" class="verdict-word">${(record.verdictText + stopped).toUpperCase()}</p>
      <p id="verdict-line" class="verdict-line">${isNewest ? line : nothing} Attempt ${record.attempt}, tested
        ${record.finished ? time(record.finished) : 'at an unknown time'}, by ${record.limitSet.id} revision
        ${record.limitSet.revision}.</p>
      ${amongTests(record)}
      ${shortfallList(record)}
      ${record.conformity?.sentence ? html`<p class="conformity">${record.conformity.sentence}</p>` : nothing}
    </div>
    <div id="certificate" class="certificate">${isNewest ? certificateOf(situation, showVerdict) : nothing}</div>`, byId('verdict'));
}
