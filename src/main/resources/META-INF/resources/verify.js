// For anyone who holds a certificate: whether it is genuine and current.

import { byId, element, notice, path, publicJson, session, showHeader, svg, time } from './page.js';
import { MARKS } from './marks.js';

const NUMBER = /[A-Z][A-Z0-9]{0,11}-[0-9]{4}-[0-9]{6}/;

const ANSWERS = {
  current: ['accepted', 'Genuine and current', 'This certificate was issued here and is the newest issue.'],
  sameFile: ['accepted', 'Genuine and current', 'The file is, byte for byte, the certificate that was issued here, in its newest issue.'],
  replaced: ['incomplete', 'Genuine, not current', 'This certificate was issued here, but a later issue has replaced it. Ask for the newest.'],
  otherFile: ['rejected', 'Not the issued file', 'The number was issued here, but this file is not the file that was issued. Do not rely on it.'],
  unknown: ['rejected', 'Not genuine', 'No certificate of this number was issued here. Compare the number with the paper; if it is right, do not rely on it.'],
};

// A scanner may give a whole address that holds the number.
function numberIn(text) {
  const plain = text.trim().toUpperCase();
  const found = plain.match(NUMBER);
  return found ? found[0] : plain;
}

function show(kind, number, facts) {
  const [look, word, line] = ANSWERS[kind];
  byId('answer').className = 'verdict ' + look;
  byId('answer-mark').replaceChildren(...MARKS[look].map(([tag, attributes]) => svg(tag, attributes)));
  byId('answer-word').textContent = word;
  byId('answer-line').textContent = line;
  byId('answer-facts').replaceChildren(...[['Number', number], ...facts].map(([label, value]) =>
    element('div', {}, element('dt', {}, label), element('dd', {}, value))));
  byId('answer').hidden = false;
}

function clear() {
  notice('');
  byId('answer').hidden = true;
  byId('answer-facts').replaceChildren();
}

let asking = 0;

async function verify(number, sha256) {
  const turn = ++asking;
  clear();
  try {
    const found = await publicJson(path('certificates', number, 'verification') + (sha256 ? `?sha256=${sha256}` : ''));
    if (turn !== asking) return;
    const kind = found.matches === false ? 'otherFile' : !found.current ? 'replaced' : found.matches === true ? 'sameFile' : 'current';
    show(kind, found.number, [['Issue', String(found.issue)], ['Issued', time(found.issued)], ['Reel', found.reel], ['Product', found.product],
      ['Compared', sha256 ? 'number and file' : 'number only; drop the PDF to compare the file']]);
  } catch (e) {
    if (turn !== asking) return;
    if (e.status === 404) show('unknown', number, []);
    else notice(e.message);
  }
}

async function verifyFile(file) {
  clear();
  if (!file) return;
  if (!window.crypto || !crypto.subtle) {
    byId('insecure').hidden = false;
    notice(byId('insecure').textContent.replace(/\s+/g, ' '));
    return;
  }
  const named = numberIn(file.name);
  const number = byId('number').value.trim() ? numberIn(byId('number').value) : NUMBER.test(named) ? named : '';
  if (!number) {
    notice('Type the certificate number that the PDF shows first, then drop the PDF again.');
    byId('number').focus();
    return;
  }
  byId('number').value = number;
  try {
    const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
    await verify(number, [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join(''));
  } catch {
    notice('The file could not be read. Choose it again.');
  }
}

byId('verify').addEventListener('submit', (event) => {
  event.preventDefault();
  const number = numberIn(byId('number').value);
  if (!number) {
    notice('Type or scan a certificate number, for example NORTH-2026-000123.');
    return;
  }
  byId('number').value = number;
  verify(number, null);
  // Ready for the next scan.
  byId('number').select();
});

byId('file').addEventListener('change', () => {
  verifyFile(byId('file').files[0]);
  byId('file').value = '';
});
for (const kind of ['dragenter', 'dragover']) {
  document.addEventListener(kind, (event) => {
    event.preventDefault();
    document.body.classList.add('dragging');
  });
}
document.addEventListener('dragleave', (event) => { if (!event.relatedTarget) document.body.classList.remove('dragging'); });
document.addEventListener('drop', (event) => {
  event.preventDefault();
  document.body.classList.remove('dragging');
  verifyFile(event.dataTransfer.files[0]);
});

byId('insecure').hidden = Boolean(window.crypto && crypto.subtle);
session().then(showHeader).catch(() => showHeader(null));
const asked = new URLSearchParams(location.search).get('number');
if (asked) {
  byId('number').value = numberIn(asked);
  verify(byId('number').value, null);
}
