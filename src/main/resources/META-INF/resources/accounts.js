// Accounts, tokens and the audit trail.

import { byId, done, element, getJson, may, notice, passwordFault, path, publicJson, requireSession, sendJson, time, watchCapsLock, words } from './page.js';

const ROLES = ['technician', 'customer-service', 'engineer', 'quality-manager', 'administrator'];
const AUDIT_PAGE = 50;

let changed = null;
let revoked = null;

function fault(dialog, text) {
  byId(dialog + '-fault').textContent = text;
  byId(dialog + '-fault').hidden = !text;
}

/** Runs what a dialog's button does; a refusal is said inside the dialog, which stays open. */
function onSubmit(dialog, act) {
  byId(dialog + '-cancel').addEventListener('click', () => byId(dialog + '-dialog').close());
  byId(dialog + '-form').addEventListener('submit', async (event) => {
    event.preventDefault();
    fault(dialog, '');
    byId(dialog + '-save').disabled = true;
    try {
      await act();
      byId(dialog + '-dialog').close();
    } catch (e) {
      fault(dialog, e.message);
    } finally {
      byId(dialog + '-save').disabled = false;
    }
  });
}

// ---- accounts

async function showAccounts() {
  const { accounts } = await getJson(path('accounts'));
  byId('accounts').replaceChildren(...accounts.map((account) => element('tr', { class: account.active ? '' : 'off' },
    element('th', { scope: 'row' }, account.displayName || account.name, account.demo ? element('small', {}, 'demo, invented') : null),
    element('td', {}, account.name),
    element('td', {}, account.roles.map(words).join(', ') || 'none'),
    element('td', {}, account.active ? 'may sign in' : 'disabled'),
    element('td', {}, element('button', { type: 'button', 'aria-label': `Change ${account.name}`, onclick: () => openAccount(account) }, 'Change')))));
}

function openAccount(account) {
  changed = account;
  done('');
  fault('account', '');
  byId('account-title').textContent = account ? `Change ${account.name}` : 'Add account';
  byId('account-name').value = account ? account.name : '';
  byId('account-name').disabled = Boolean(account);
  byId('account-name').required = !account;
  byId('account-display').value = account ? account.displayName || '' : '';
  byId('account-roles').replaceChildren(...ROLES.map((role) => {
    const box = element('input', { type: 'checkbox', value: role, id: 'role-' + role });
    box.checked = Boolean(account && account.roles.includes(role));
    return element('label', { class: 'choice', for: 'role-' + role }, box, ' ' + words(role));
  }));
  byId('account-password').value = '';
  byId('account-password').required = !account;
  byId('account-password-label').textContent = account ? 'New password (empty: it stays; a new one ends the account’s sessions)' : 'First password';
  byId('account-active').checked = !account || account.active;
  byId('account-active-label').hidden = !account;
  byId('account-reason').value = '';
  byId('account-reason').required = Boolean(account);
  for (const id of ['account-reason', 'account-reason-label']) byId(id).hidden = !account;
  byId('account-dialog').showModal();
}

onSubmit('account', async () => {
  const roles = ROLES.filter((role) => byId('role-' + role).checked);
  const password = byId('account-password').value;
  const displayName = byId('account-display').value;
  const weakness = password || !changed ? passwordFault(password) : '';
  if (weakness) throw new Error(weakness);
  if (changed) {
    const change = { reason: byId('account-reason').value };
    if (displayName !== changed.displayName) change.displayName = displayName;
    if (roles.join() !== ROLES.filter((role) => changed.roles.includes(role)).join()) change.roles = roles;
    if (byId('account-active').checked !== changed.active) change.active = byId('account-active').checked;
    if (password) change.password = password;
    if (Object.keys(change).length === 1) throw new Error('Nothing was changed. Change something, or cancel.');
    await sendJson('PATCH', path('accounts', changed.name), change);
    done(`Account ${changed.name} was changed.`);
  } else {
    await sendJson('POST', path('accounts'), { name: byId('account-name').value, displayName, roles, password });
    done(`Account ${byId('account-name').value} was added.`);
  }
  byId('account-password').value = '';
  await showAccounts();
});

// A password does not stay in a dialog that was left.
byId('account-dialog').addEventListener('close', () => { byId('account-password').value = ''; });
byId('add-account').addEventListener('click', () => openAccount(null));

// ---- tokens

const tokenState = (token) => (token.revoked ? 'revoked' : token.expires && Date.parse(token.expires) <= Date.now() ? 'expired' : 'in use');

async function showTokens() {
  const { tokens } = await getJson(path('tokens'));
  byId('tokens').replaceChildren(...tokens.map((token) => {
    const state = tokenState(token);
    return element('tr', { class: state === 'in use' ? '' : 'off' },
      element('th', { scope: 'row' }, token.name, element('small', {}, token.id)), element('td', {}, token.plant || 'every plant'),
      element('td', {}, (token.roles || [token.role]).map(words).join(', ')), element('td', {}, time(token.expires) || 'never'),
      element('td', {}, state),
      element('td', {}, token.revoked ? '' : element('button', { type: 'button', 'aria-label': `Revoke ${token.name}`, onclick: () => openRevoke(token) }, 'Revoke')));
  }));
}

byId('add-token').addEventListener('click', () => {
  done('');
  fault('token', '');
  byId('token-form').reset();
  byId('token-dialog').showModal();
});

onSubmit('token', async () => {
  const day = byId('token-expires').value;
  const wanted = { name: byId('token-name').value, role: byId('token-role').value, plant: byId('token-plant').value };
  if (day) wanted.expires = new Date(day + 'T23:59:59').toISOString();
  const token = await sendJson('POST', path('tokens'), wanted);
  byId('token-dialog').close();
  byId('secret-text').value = token.secret;
  byId('copied').textContent = '';
  byId('secret').hidden = false;
  byId('secret').scrollIntoView({ block: 'center' });
  byId('copy').focus();
  await showTokens();
});

byId('copy').addEventListener('click', async () => {
  byId('secret-text').select();
  try {
    await navigator.clipboard.writeText(byId('secret-text').value);
    byId('copied').textContent = 'Copied.';
  } catch {
    // No clipboard away from https and localhost, or when the browser forbids it.
    byId('copied').textContent = 'The browser does not let this page copy. The secret is marked: press Ctrl+C.';
    byId('secret-text').focus();
  }
});

byId('secret-done').addEventListener('click', () => {
  byId('secret-text').value = '';
  byId('secret').hidden = true;
  byId('add-token').focus();
});

function openRevoke(token) {
  revoked = token;
  done('');
  fault('revoke', '');
  byId('revoke-title').textContent = `Revoke ${token.name}`;
  byId('revoke-reason').value = '';
  byId('revoke-dialog').showModal();
}

onSubmit('revoke', async () => {
  await getJson(`${path('tokens', revoked.id)}?reason=${encodeURIComponent(byId('revoke-reason').value)}`, { method: 'DELETE' });
  done(`Token ${revoked.name} was revoked.`);
  await showTokens();
});

// ---- audit trail

let filter = {};
let oldest = null;

const told = (value) => (value !== null && typeof value === 'object' ? JSON.stringify(value) : String(value));

function entryRow(entry) {
  const details = Object.entries(entry.details || {}).map(([key, value]) => `${words(key)}: ${told(value)}`);
  return element('tr', {}, element('td', { class: 'u' }, time(entry.at)),
    element('td', {}, entry.actor, element('small', {}, entry.actorKind === 'none' ? 'not signed in' : entry.actorKind)),
    element('td', {}, entry.from || ''), element('td', {}, words(entry.action)),
    element('td', { class: 'break' }, entry.subject || ''),
    element('td', { class: 'break' }, entry.reason || '', ...details.map((line) => element('small', {}, line))));
}

async function showAudit(older) {
  const query = new URLSearchParams({ ...filter, limit: String(AUDIT_PAGE) });
  if (older) query.set('before', String(oldest));
  const { entries } = await getJson(`/api/v1/audit?${query}`);
  if (!older) byId('audit').replaceChildren();
  byId('audit').append(...entries.map(entryRow));
  if (entries.length) oldest = entries[entries.length - 1].id;
  byId('older').hidden = entries.length < AUDIT_PAGE;
  const shown = byId('audit').children.length;
  byId('audit-state').textContent = shown === 0 ? 'No entry fits.'
    : `${shown} ${shown === 1 ? 'entry' : 'entries'} shown, newest first.${entries.length < AUDIT_PAGE ? ' There are no older ones.' : ''}`;
}

byId('audit-filter').addEventListener('submit', (event) => {
  event.preventDefault();
  notice('');
  filter = Object.fromEntries(['subject', 'actor', 'action'].map((key) => [key, byId('audit-' + key).value.trim()]).filter(([, value]) => value));
  if (filter.action) filter.action = filter.action.toLowerCase().replaceAll(' ', '-');
  showAudit(false).catch((e) => notice(e.message));
});
byId('audit-filter').addEventListener('reset', () => {
  filter = {};
  showAudit(false).catch((e) => notice(e.message));
});
byId('older').addEventListener('click', () => showAudit(true).catch((e) => notice(e.message)));

// ---- start

async function start() {
  const who = await requireSession();
  const manages = may(who, 'manage-users');
  document.title = `${manages ? 'Accounts' : 'Audit trail'} · Reelproof`;
  byId('page-title').textContent = manages ? 'Accounts' : 'Audit trail';
  byId('audit-title').textContent = manages ? 'Audit trail' : 'Entries';
  byId('page-title').hidden = false;
  if (manages) {
    const { plant, plants } = await publicJson('/api/v1/status');
    byId('token-plant').replaceChildren(...(plants || [plant]).map((one) => element('option', {}, one)));
    byId('token-role').replaceChildren(...ROLES.map((role) => element('option', { value: role }, words(role))));
    byId('accounts-section').hidden = false;
    byId('tokens-section').hidden = false;
    await showAccounts();
    await showTokens();
  }
  if (may(who, 'read-audit')) {
    byId('audit-section').hidden = false;
    await showAudit(false);
  }
  if (!manages && !may(who, 'read-audit')) {
    notice('This page is for administrators; quality managers see the audit trail here. Ask an administrator if you need it.');
  }
}

watchCapsLock(byId('account-password'), byId('account-caps'));
start().catch((e) => notice(e.message));
