// A person changes the own password.

import { byId, done, notice, passwordFault, requireSession, sendJson, watchCapsLock } from './page.js';

byId('change').addEventListener('submit', async (event) => {
  event.preventDefault();
  notice('');
  done('');
  const password = byId('password').value;
  const fault = passwordFault(password) || (password === byId('again').value ? '' : 'The two new passwords differ. Type the same one twice.');
  if (fault) {
    notice(fault);
    byId('password').focus();
    return;
  }
  byId('save').disabled = true;
  try {
    await sendJson('POST', '/api/v1/session/password', { current: byId('current').value, new: password });
    byId('change').reset();
    done('Your password is changed.');
  } catch (e) {
    notice(e.message);
    byId('current').focus();
  } finally {
    byId('save').disabled = false;
  }
});

watchCapsLock(byId('current'), byId('caps'));
requireSession().catch((e) => notice(e.message));
