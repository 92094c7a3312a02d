// The header: the pages open to this person, the name with the roles, sign-out; or a link to sign in.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { FIRST, SIGN_IN, path, signInAddress } from './addresses.js';
import { byId } from './dom.js';
import { noticeFault } from './notices.js';
import { status } from './requests.js';
import { getJson, goToSignIn, may, session } from './session.js';
import { words } from './words.js';

const VERIFY = '/verify.html';

/** @type {[string, string, (who: Answer.Session | null) => boolean][]} */
const PAGES = [
  [FIRST, 'Reels', (who) => who !== null],
  ['/approvals.html', 'Approvals', (who) => may(who, 'approve')],
  ['/accounts.html', 'Accounts', (who) => may(who, 'manage-users')],
  ['/accounts.html', 'Audit trail', (who) => may(who, 'read-audit') && !may(who, 'manage-users')],
  [VERIFY, 'Verify', () => true],
];

async function signOut() {
  try {
    await getJson(path('session'), { method: 'DELETE' });
    location.assign(SIGN_IN);
  } catch (fault) {
    noticeFault(fault);
  }
}

/** @param {Answer.Session} who */
const person = (who) => html`
  <a class="name" id="who-name" href="/password.html" title="Change your password">${who.displayName || who.name}</a>
  <span class="roles" id="who-roles">${who.roles.map(words).join(', ') || 'no role'}</span>
  <button type="button" id="sign-out" @click=${signOut}>Sign out</button>`;

/** @param {string} here */
const visitor = (here) => (here === SIGN_IN ? nothing : html`<a href=${signInAddress(location)} id="sign-in-link">Sign in</a>`);

/** @param {Answer.Session | null} who */
export function showHeader(who) {
  const here = location.pathname === '/index.html' ? FIRST : location.pathname;
  render(PAGES.filter(([, , isOpen]) => isOpen(who)).map(([address, label]) =>
    html`<a href=${address} aria-current=${address === here ? 'page' : nothing}>${label}</a>`), byId('pages'));
  render(who ? person(who) : visitor(here), byId('who'));
  status()
    .then(({ plant, demo }) => { byId('plant').textContent = `Plant ${plant}${demo ? ' · demo, all data invented' : ''}`; })
    .catch(() => {});
}

/** For pages that show nothing without a session: who is signed in, with the header filled. */
export async function requireSession() {
  const who = await session();
  if (!who) return goToSignIn();
  showHeader(who);
  return who;
}

/** For pages that are open to everybody. */
export const greetAnyone = () => session().then(showHeader).catch(() => showHeader(null));

// A page taken from the browser's memory after sign-out would show what it showed before.
window.addEventListener('pageshow', (event) => { if (event.persisted) location.reload(); });
