// The first start: the one-time link makes the first administrator.

import { byId, done, notice, passwordFault, publicJson, showHeader, watchCapsLock } from './page.js';

const READING_TIME = 1500;

const token = location.hash.slice(1);
// The link works once and is not to stay in the address bar or the history.
history.replaceState(null, '', location.pathname);

byId('set-up').addEventListener('submit', async (event) => {
  event.preventDefault();
  notice('');
  const password = byId('password').value;
  const fault = passwordFault(password) || (password === byId('again').value ? '' : 'The two passwords differ. Type the same one twice.');
  if (fault) {
    notice(fault);
    byId('password').focus();
    return;
  }
  byId('make').disabled = true;
  try {
    await publicJson('/api/v1/set-up', {
      method: 'POST', headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ token, name: byId('name').value, displayName: byId('display-name').value, password }),
    });
    byId('set-up').hidden = true;
    done('The administrator is made. Now sign in.');
    setTimeout(() => location.replace('/sign-in.html?next=' + encodeURIComponent('/accounts.html')), READING_TIME);
  } catch (e) {
    byId('make').disabled = false;
    notice(e.message);
  }
});

watchCapsLock(byId('password'), byId('caps'));
showHeader(null);
if (!token) {
  byId('set-up').hidden = true;
  notice('This page needs the one-time link that the service printed at its first start. Open that link whole, with what follows the #.');
}
