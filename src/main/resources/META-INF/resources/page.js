// What every page shares: making elements, asking the service, who is signed in, the header.

export const byId = (id) => document.getElementById(id);
export const path = (...parts) => '/api/v1/' + parts.map(encodeURIComponent).join('/');
export const words = (word) => word.replaceAll('-', ' ');

const SIGN_IN = '/sign-in.html';
const SAFE_METHODS = new Set(['GET', 'HEAD']);

/** Text given as a child is shown as text, never read as markup. */
export function element(name, options = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(options)) {
    if (key === 'class') made.className = value;
    else if (key.startsWith('on')) made.addEventListener(key.slice(2), value);
    else made.setAttribute(key, value);
  }
  made.append(...children.filter((child) => child !== null && child !== undefined));
  return made;
}

export function svg(name, attributes) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

export function time(text) {
  if (!text) return '';
  return element('time', { datetime: text, title: new Date(text).toISOString() + ' (UTC)' },
    new Date(text).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' }));
}

export function notice(text) {
  byId('notice').textContent = text || '';
  byId('notice').hidden = !text;
}

/** Says in a live region that something was done. */
export function done(text) {
  byId('done').textContent = text;
  byId('done').hidden = !text;
}

// ---- asking the service

function problemOf(response, body) {
  const faults = (body.errors || []).map((fault) => fault.message).filter((message) => message && message !== body.detail);
  const said = [body.detail || body.title || `The service answered ${response.status}.`, ...faults].join(' ');
  const problem = new Error(said);
  problem.body = body;
  problem.status = response.status;
  problem.retryAfter = response.headers.get('Retry-After');
  return problem;
}

async function ask(address, options) {
  let response;
  try {
    response = await fetch(address, { credentials: 'same-origin', ...options });
  } catch {
    throw new Error('The service did not answer. Check the network and try again.');
  }
  const body = await response.json().catch(() => ({}));
  if (!response.ok) throw problemOf(response, body);
  return body;
}

/** For pages that need no session: nothing is added, and a 401 is only an error. */
export function publicJson(address, options = {}) {
  return ask(address, { ...options, headers: { Accept: 'application/json', ...options.headers } });
}

let asked = null;

/** Who is signed in: {name, displayName, roles, may, csrf, …}; null when nobody is. */
export function session() {
  if (!asked) {
    asked = publicJson('/api/v1/session').catch((e) => {
      asked = null;
      if (e.status === 401) return null;
      throw e;
    });
  }
  return asked;
}

/** Asked anew before a change: a sign-in in another tab brings another CSRF token. */
export function freshSession() {
  asked = null;
  return session();
}

export const may = (who, action) => Boolean(who && (who.may || []).includes(action));

/** The page to come back to, given to the sign-in page. */
export const signInAddress = () =>
  `${SIGN_IN}?next=${encodeURIComponent(location.pathname + location.search + location.hash)}`;

export function goToSignIn() {
  location.replace(signInAddress());
  // Nothing after this is to run: the browser is leaving.
  return new Promise(() => {});
}

/** Where to go after sign-in: an address of this very service, else the first page. */
export function nextAddress(text) {
  try {
    const next = new URL(text, location.origin);
    const ours = text.startsWith('/') && next.origin === location.origin && next.pathname !== SIGN_IN;
    // The whole address, not its path: a path that begins with two slashes would name another host.
    return ours ? next.href : location.origin + '/';
  } catch {
    return location.origin + '/';
  }
}

/** Asks as the person who is signed in; sends the browser to the sign-in page when nobody is. */
export async function getJson(address, options = {}) {
  const headers = { Accept: 'application/json', ...options.headers };
  if (!SAFE_METHODS.has(options.method || 'GET')) {
    const who = await freshSession();
    if (!who) return goToSignIn();
    if (who.csrf) headers['X-CSRF-Token'] = who.csrf;
  }
  try {
    return await ask(address, { ...options, headers });
  } catch (e) {
    if (e.status === 401) return goToSignIn();
    throw e;
  }
}

export const sendJson = (method, address, body) =>
  getJson(address, { method, body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } });

// ---- the header

async function signOut() {
  try {
    await getJson('/api/v1/session', { method: 'DELETE' });
    location.assign(SIGN_IN);
  } catch (e) {
    notice(e.message);
  }
}

const PAGES = [
  ['/', 'Reels', () => true],
  ['/approvals.html', 'Approvals', (who) => may(who, 'approve')],
  ['/accounts.html', 'Accounts', (who) => may(who, 'manage-users')],
  ['/accounts.html', 'Audit trail', (who) => may(who, 'read-audit') && !may(who, 'manage-users')],
  ['/verify.html', 'Verify', () => true],
];

/** Fills the header: the pages open to this person, the name with the roles, sign-out; or a link to sign in. */
export function showHeader(who) {
  const here = location.pathname === '/index.html' ? '/' : location.pathname;
  const pages = who ? PAGES.filter(([, , open]) => open(who)) : PAGES.filter(([address]) => address === '/verify.html');
  byId('pages').replaceChildren(...pages.map(([address, label]) =>
    element('a', address === here ? { href: address, 'aria-current': 'page' } : { href: address }, label)));
  byId('who').replaceChildren(...(who
    ? [element('a', { class: 'name', id: 'who-name', href: '/password.html', title: 'Change your password' }, who.displayName || who.name),
      element('span', { class: 'roles', id: 'who-roles' }, (who.roles || []).map(words).join(', ') || 'no role'),
      element('button', { type: 'button', id: 'sign-out', onclick: signOut }, 'Sign out')]
    : here === SIGN_IN ? [] : [element('a', { href: signInAddress(), id: 'sign-in-link' }, 'Sign in')]));
}

/** For pages that show nothing without a session: who is signed in, with the header filled. */
export async function requireSession() {
  const who = await session();
  if (!who) return goToSignIn();
  showHeader(who);
  return who;
}

// A page taken from the browser's memory after sign-out would show what it showed before.
window.addEventListener('pageshow', (event) => { if (event.persisted) location.reload(); });

// ---- passwords

const SHORTEST_PASSWORD = 12;
const LONGEST_PASSWORD = 72;

/** Why a new password would be refused, in a sentence; empty when it would not. */
export function passwordFault(password) {
  const bytes = new TextEncoder().encode(password).length;
  if (bytes < SHORTEST_PASSWORD) return `The password needs at least ${SHORTEST_PASSWORD} characters.`;
  return bytes <= LONGEST_PASSWORD ? ''
    : `The password is too long: it takes ${bytes} bytes, and at most ${LONGEST_PASSWORD} can be kept.`;
}

/** Says below a password field that caps lock is on. */
export function watchCapsLock(field, hint) {
  const look = (event) => {
    // Not every event that a browser sends as a key has this, filling in by a password manager among them.
    if (event.getModifierState) hint.hidden = !event.getModifierState('CapsLock');
  };
  field.addEventListener('keydown', look);
  field.addEventListener('keyup', look);
  field.addEventListener('blur', () => { hint.hidden = true; });
}
