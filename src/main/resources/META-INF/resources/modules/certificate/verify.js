// For anyone who holds a certificate: whether it is genuine and current.

import { nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, field, onSubmit, show } from '../page/dom.js';
import { takeDrops } from '../page/dropping.js';
import { greetAnyone } from '../page/header.js';
import { notice, noticeFault } from '../page/notices.js';
import { isStatus, publicJson } from '../page/requests.js';
import { foundAnswer, unknownAnswer } from './answer.js';
import { hexadecimal, numberFor, numberIn } from './number.js';

const NOT_FOUND = 404;

/** Over plain http from elsewhere the browser computes no digest. */
const digests = window.crypto?.subtle;

let asking = 0;

/** @param {unknown} answer */
const showAnswer = (answer) => render(answer, byId('result'));

function clear() {
  notice('');
  showAnswer(nothing);
}

/**
 * @param {string} number
 * @param {string | null} sha256 of the file, when there is one to compare
 */
async function verify(number, sha256) {
  const turn = ++asking;
  clear();
  try {
    const found = await publicJson(path('certificates', number, 'verification') + (sha256 ? `?sha256=${sha256}` : ''));
    if (turn === asking) showAnswer(foundAnswer(found, Boolean(sha256)));
  } catch (fault) {
    if (turn !== asking) return;
    if (isStatus(fault, NOT_FOUND)) showAnswer(unknownAnswer(number));
    else noticeFault(fault);
  }
}

/** @param {File | undefined} file */
async function verifyFile(file) {
  clear();
  if (!file) return;
  if (!digests) {
    show('insecure', true);
    notice((byId('insecure').textContent ?? '').replace(/\s+/g, ' '));
    return;
  }
  const number = numberFor(field('number').value, file.name);
  if (!number) {
    notice('Type the certificate number that the PDF shows first, then drop the PDF again.');
    field('number').focus();
    return;
  }
  field('number').value = number;
  let digest;
  try {
    digest = await digests.digest('SHA-256', await file.arrayBuffer());
  } catch {
    notice('The file could not be read. Choose it again.');
    return;
  }
  await verify(number, hexadecimal(digest));
}

function verifyTyped() {
  const number = numberIn(field('number').value);
  if (!number) {
    notice('Type or scan a certificate number, for example NORTH-2026-000123.');
    return;
  }
  field('number').value = number;
  verify(number, null);
  // Ready for the next scan.
  field('number').select();
}

onSubmit('verify', verifyTyped);
field('file').addEventListener('change', () => {
  verifyFile(field('file').files?.[0]);
  field('file').value = '';
});
takeDrops(([file]) => verifyFile(file));
show('insecure', !digests);
greetAnyone();
const asked = new URLSearchParams(location.search).get('number');
if (asked) {
  field('number').value = numberIn(asked);
  verify(field('number').value, null);
}
