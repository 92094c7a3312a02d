// Sign in by name and password, or by the company's account.

import { nextAddress, path } from '../page/addresses.js';
import { button, byId, field, onSubmit, show } from '../page/dom.js';
import { showHeader } from '../page/header.js';
import { notice, noticeFault } from '../page/notices.js';
import { Refusal, jsonBody, publicJson, status } from '../page/requests.js';
import { watchCapsLock } from './passwords.js';
import { secondsToWait, spoken } from './waiting.js';

const TOO_MANY = 429;
const TICK_MS = 500;
const REFUSED = new Map([
  ['no-role', 'Your company account has none of the groups that open this service. Ask an administrator which group you need.'],
  ['name-taken', 'Another person has your name here. Ask an administrator to change one of the two.'],
  ['no-name', 'Your company account has no name that can be used here. Ask an administrator.'],
]);
const TURNED_AWAY = 'The identity provider did not sign you in. Try again, or ask an administrator.';

const asked = new URLSearchParams(location.search);
const next = nextAddress(asked.get('next') ?? '/', location.origin);

/**
 * A timer is not read out at every second; it describes the password field, and its end is said.
 *
 * @param {Refusal} refusal
 */
function countDown(refusal) {
  const until = Date.now() + 1000 * secondsToWait(refusal.retryAfter, Date.now());
  notice(refusal.message);
  button('enter').disabled = true;
  show('countdown', true);
  const tick = () => {
    const left = Math.ceil((until - Date.now()) / 1000);
    if (left > 0) {
      byId('countdown').textContent = `You can try again in ${spoken(left)}.`;
      return;
    }
    clearInterval(timer);
    show('countdown', false);
    button('enter').disabled = false;
    notice('You can try again now.');
  };
  const timer = setInterval(tick, TICK_MS);
  tick();
}

async function signIn() {
  if (button('enter').disabled) return;
  notice('');
  button('enter').disabled = true;
  try {
    await publicJson(path('session'), jsonBody('POST', { name: field('name').value, password: field('password').value }));
    location.replace(next);
  } catch (fault) {
    button('enter').disabled = false;
    field('password').value = '';
    if (fault instanceof Refusal && fault.status === TOO_MANY) countDown(fault);
    else noticeFault(fault);
    field('password').focus();
  }
}

onSubmit('sign-in', signIn);
watchCapsLock(field('password'), byId('caps'));
showHeader(null);
if (asked.has('error')) notice(TURNED_AWAY);
else if (asked.has('provider')) notice(REFUSED.get(asked.get('provider') ?? '') ?? TURNED_AWAY);
status().then(({ demo, identityProvider }) => {
  show('demo', demo);
  show('provider', identityProvider);
  byId('provider-link', HTMLAnchorElement).href =
    `${path('session', 'identity-provider')}?next=${encodeURIComponent(next.slice(location.origin.length))}`;
}).catch(noticeFault);
