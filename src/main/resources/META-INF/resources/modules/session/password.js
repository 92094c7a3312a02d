// A person changes the own password.

import { path } from '../page/addresses.js';
import { button, byId, field, onSubmit } from '../page/dom.js';
import { requireSession } from '../page/header.js';
import { done, notice, noticeFault } from '../page/notices.js';
import { sendJson } from '../page/session.js';
import { chosenFault, watchCapsLock } from './passwords.js';

async function change() {
  notice('');
  done('');
  const password = field('password').value;
  const fault = chosenFault(password, field('again').value);
  if (fault) {
    notice(fault);
    field('password').focus();
    return;
  }
  button('save').disabled = true;
  try {
    await sendJson('POST', path('session', 'password'), { current: field('current').value, new: password });
    byId('change', HTMLFormElement).reset();
    done('Your password is changed.');
  } catch (refusal) {
    noticeFault(refusal);
    field('current').focus();
  } finally {
    button('save').disabled = false;
  }
}

onSubmit('change', change);
watchCapsLock(field('current'), byId('caps'));
requireSession().catch(noticeFault);
