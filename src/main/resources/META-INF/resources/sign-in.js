// Sign in by name and password.

import { byId, nextAddress, notice, publicJson, showHeader, watchCapsLock } from './page.js';

const PROVIDER = '/api/v1/session/identity-provider';
const WAIT_UNSAID = 60;
const REFUSED = new Map([
  ['no-role', 'Your company account has none of the groups that open this service. Ask an administrator which group you need.'],
  ['name-taken', 'Another person has your name here. Ask an administrator to change one of the two.'],
  ['no-name', 'Your company account has no name that can be used here. Ask an administrator.'],
]);
const TURNED_AWAY = 'The identity provider did not sign you in. Try again, or ask an administrator.';

const asked = new URLSearchParams(location.search);
const next = nextAddress(asked.get('next') || '/');

const seconds = (count) => (count === 1 ? '1 second' : count < 120 ? `${count} seconds` : `${Math.ceil(count / 60)} minutes`);

/** Retry-After is a number of seconds or a date. */
function waiting(retryAfter) {
  const told = /^\d+$/.test(retryAfter || '') ? Number(retryAfter) : Math.ceil((Date.parse(retryAfter) - Date.now()) / 1000);
  return Number.isFinite(told) ? Math.max(1, told) : WAIT_UNSAID;
}

/** A timer is not read out at every second; it describes the password field, and its end is said. */
function countDown(problem) {
  const until = Date.now() + 1000 * waiting(problem.retryAfter);
  notice(problem.message);
  byId('enter').disabled = true;
  byId('countdown').hidden = false;
  const tick = () => {
    const left = Math.ceil((until - Date.now()) / 1000);
    if (left > 0) {
      byId('countdown').textContent = `You can try again in ${seconds(left)}.`;
      return;
    }
    clearInterval(timer);
    byId('countdown').hidden = true;
    byId('enter').disabled = false;
    notice('You can try again now.');
  };
  const timer = setInterval(tick, 500);
  tick();
}

byId('sign-in').addEventListener('submit', async (event) => {
  event.preventDefault();
  if (byId('enter').disabled) return;
  notice('');
  byId('enter').disabled = true;
  try {
    await publicJson('/api/v1/session', {
      method: 'POST', headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ name: byId('name').value, password: byId('password').value }),
    });
    location.replace(next);
  } catch (e) {
    byId('enter').disabled = false;
    byId('password').value = '';
    if (e.status === 429) countDown(e);
    else notice(e.message);
    byId('password').focus();
  }
});

watchCapsLock(byId('password'), byId('caps'));
showHeader(null);
if (asked.has('error')) notice(TURNED_AWAY);
else if (asked.has('provider')) notice(REFUSED.get(asked.get('provider')) || TURNED_AWAY);
publicJson('/api/v1/status').then((status) => {
  byId('demo').hidden = status.demo !== true;
  byId('provider').hidden = status.identityProvider !== true;
  byId('provider-link').href = `${PROVIDER}?next=${encodeURIComponent(next.slice(location.origin.length))}`;
}).catch((e) => notice(e.message));
