// One test of the reel: its verdict, why, and what follows.

import { html, render } from '/_static/lit-html/lit-html.js';
import { byId, show } from '../page/dom.js';
import { showAlternatives } from './alternatives.js';
import { showCurves } from './curves.js';
import { showFindings, showReasons } from './findings.js';
import { shown, turns } from './shown.js';
import { showVerdict } from './verdict.js';

const showings = turns();

/**
 * @param {Answer.Record[]} records
 * @param {Answer.Record} current
 */
function showAttempts(records, current) {
  show('attempt-label', records.length > 1);
  render(records.map((one, index) => html`<option value=${index} .selected=${one.id === current.id}>${one.attempt}:
    ${one.verdictText}</option>`), byId('attempt'));
}

/**
 * @param {Answer.Record | null} record null where the reel has not been tested
 * @param {{ isTakenBefore?: boolean }} [how] whether it is that of a file that was sent again
 */
export function showRecord(record, { isTakenBefore = false } = {}) {
  const { reel, who } = shown;
  const isNewest = showings.next();
  shown.record = record;
  show('record', record !== null);
  show('untested', record === null);
  if (!record || !reel) return;
  showVerdict({ reel, record, who, isTakenBefore });
  render((record.warnings ?? []).map((warning) => html`<li>${warning}</li>`), byId('warnings'));
  show('warnings', (record.warnings ?? []).length > 0);
  showReasons(record);
  showAttempts(reel.records, record);
  showFindings(record);
  // After the verdict, so that it never waits for them.
  const isShown = () => isNewest() && shown.record === record;
  showAlternatives(record, isShown);
  showCurves(record, isShown);
}

export function startAttempts() {
  const attempts = byId('attempt', HTMLSelectElement);
  attempts.addEventListener('change', () => showRecord(shown.reel?.records[Number(attempts.value)] ?? null));
}
