// The first start: the one-time link makes the first administrator.

import { SIGN_IN, path } from '../page/addresses.js';
import { button, byId, field, onSubmit, show } from '../page/dom.js';
import { showHeader } from '../page/header.js';
import { done, notice, noticeFault } from '../page/notices.js';
import { jsonBody, publicJson } from '../page/requests.js';
import { chosenFault, watchCapsLock } from './passwords.js';

const READING_TIME_MS = 1500;

const token = location.hash.slice(1);
// The link works once and is not to stay in the address bar or the history.
history.replaceState(null, '', location.pathname);

async function setUp() {
  notice('');
  const password = field('password').value;
  const fault = chosenFault(password, field('again').value);
  if (fault) {
    notice(fault);
    field('password').focus();
    return;
  }
  button('make').disabled = true;
  try {
    await publicJson(path('set-up'),
      jsonBody('POST', { token, name: field('name').value, displayName: field('display-name').value, password }));
    show('set-up', false);
    done('The administrator is made. Now sign in.');
    setTimeout(() => location.replace(`${SIGN_IN}?next=${encodeURIComponent('/accounts.html')}`), READING_TIME_MS);
  } catch (refusal) {
    button('make').disabled = false;
    noticeFault(refusal);
  }
}

onSubmit('set-up', setUp);
watchCapsLock(field('password'), byId('caps'));
showHeader(null);
if (!token) {
  show('set-up', false);
  notice('This page needs the one-time link that the service printed at its first start. Open that link whole, with what follows the #.');
}
