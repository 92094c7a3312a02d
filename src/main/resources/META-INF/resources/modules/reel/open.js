// Opening a reel, or going back to the start.

import { html, render } from '/_static/lit-html/lit-html.js';
import { orderAddress, path } from '../page/addresses.js';
import { byId, field, show } from '../page/dom.js';
import { notice, noticeFault } from '../page/notices.js';
import { isStatus } from '../page/requests.js';
import { getJson } from '../page/session.js';
import { factList } from '../page/words.js';
import { showConcession } from './concession.js';
import { showHolds } from './holds.js';
import { showRecord } from './record.js';
import { shown, turns } from './shown.js';
import { showStart } from './start.js';

const NOT_FOUND = 404;

const openings = turns();

/** @param {Answer.Reel} reel */
function showHead(reel) {
  document.title = `${reel.reel} · Reelproof`;
  show('start', false);
  show('reel', true);
  byId('reel-number').textContent = `Reel ${reel.reel}`;
  const order = reel.order && html`<a href=${orderAddress(reel.order)}>${reel.order}</a>`;
  render(factList([['Product', reel.product], ['Length', reel.printedLength],
    ['Length marks', reel.printedLengthMarks], ['Order', order],
    ['Customer', reel.customer], ['Plant', reel.plant]]), byId('reel-facts'));
}

/** @param {Answer.Reel} reel */
function showRetest(reel) {
  show('retest', reel.records.length > 0);
  byId('retest-hint').textContent = reel.asksRetestReason ? 'Asked of every test after the first.' : 'May be left empty.';
}

export async function openStart() {
  openings.next();
  shown.reel = null;
  shown.record = null;
  await showStart();
}

/**
 * @param {string} number
 * @param {{ record?: string, isTakenBefore?: boolean }} [wanted] the record to show; the newest when none is named
 */
export async function openReel(number, wanted = {}) {
  const isNewest = openings.next();
  notice('');
  show('faults', false);
  byId('upload-state').textContent = '';
  try {
    /** @type {Answer.Reel} */
    const reel = await getJson(path('reels', number));
    if (!isNewest()) return;
    shown.reel = reel;
    showHead(reel);
    showHolds(reel);
    showRetest(reel);
    showRecord(reel.records.find(({ id }) => id === wanted.record) ?? reel.records[0] ?? null, wanted);
    showConcession(reel).catch(noticeFault);
  } catch (fault) {
    if (!isNewest()) return;
    await openStart().catch(() => {});
    if (isStatus(fault, NOT_FOUND)) notice(`Reel ${number} is not known here. Check the number, or register the reel first.`);
    else noticeFault(fault);
    field('query').focus();
  }
}
