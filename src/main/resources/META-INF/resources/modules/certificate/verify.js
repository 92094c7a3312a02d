// For anyone who holds a certificate: whether it is genuine and current.

import { nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, field, onSubmit } from '../page/dom.js';
import { takeDrops } from '../page/dropping.js';
import { greetAnyone } from '../page/header.js';
import { notice, noticeFault } from '../page/notices.js';
import { isStatus, publicJson } from '../page/requests.js';
import { foundAnswer, unknownNumber } from './answer.js';
import { numberIn } from './number.js';

const NOT_FOUND = 404;

let asking = 0;

/** @param {unknown} answer */
const showAnswer = (answer) => render(answer, byId('result'));

function clear() {
  notice('');
  showAnswer(nothing);
}

/**
 * Shows what the service answers, unless something else was asked meanwhile.
 *
 * @param {() => Promise<Answer.Verification>} ask
 * @param {boolean} withFile
 */
async function verify(ask, withFile) {
  const turn = ++asking;
  clear();
  try {
    const found = await ask();
    if (turn === asking) showAnswer(foundAnswer(found, withFile));
  } catch (fault) {
    if (turn === asking) noticeFault(fault);
  }
}

/** @param {string} number */
const verifyNumber = (number) => verify(async () => {
  try {
    return await publicJson(path('certificates', number, 'verification'));
  } catch (fault) {
    if (!isStatus(fault, NOT_FOUND)) throw fault;
    return unknownNumber(number, `${/** @type {Error} */ (fault).message} Compare it with the paper; if it is right, do not rely on it.`);
  }
}, false);

/**
 * The service reads the number from the file itself: neither the file's name nor a number left in the form matters.
 *
 * @param {File | undefined} file
 */
function verifyFile(file) {
  field('number').value = '';
  if (!file) {
    clear();
    return;
  }
  verify(async () => publicJson(path('certificates', 'verification'), {
    method: 'POST', body: await file.arrayBuffer().catch(() => { throw new Error('The file could not be read. Choose it again.'); }),
    headers: { 'Content-Type': 'application/pdf' },
  }), true);
}

function verifyTyped() {
  const number = numberIn(field('number').value);
  if (!number) {
    notice('Type or scan a certificate number, for example NORTH-2026-000123.');
    return;
  }
  field('number').value = number;
  verifyNumber(number);
  // Ready for the next scan.
  field('number').select();
}

onSubmit('verify', verifyTyped);
field('file').addEventListener('change', () => {
  verifyFile(field('file').files?.[0]);
  field('file').value = '';
});
takeDrops(([file]) => verifyFile(file));
greetAnyone();
const asked = new URLSearchParams(location.search).get('number');
if (asked) {
  field('number').value = numberIn(asked);
  verifyNumber(field('number').value);
}
