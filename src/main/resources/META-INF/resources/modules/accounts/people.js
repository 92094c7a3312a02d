// The people who may sign in.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, dialog, field, show } from '../page/dom.js';
import { done } from '../page/notices.js';
import { getJson, sendJson } from '../page/session.js';
import { words } from '../page/words.js';
import { passwordFault, watchCapsLock } from '../session/passwords.js';
import { accountChange } from './change.js';
import { onDialog, openDialog } from './form-dialog.js';
import { ROLES, rolesThat } from './roles.js';

/**
 * The account that the dialog changes; null while it adds one.
 *
 * @type {Answer.Account | null}
 */
let changed = null;

/** @param {Answer.Account} account */
const row = (account) => html`
  <tr class=${account.active ? '' : 'off'}>
    <th scope="row">${account.displayName || account.name}${account.demo ? html`<small>demo, invented</small>` : nothing}</th>
    <td>${account.name}</td>
    <td>${account.roles.map(words).join(', ') || 'none'}</td>
    <td>${account.active ? 'may sign in' : 'disabled'}</td>
    <td><button type="button" aria-label="Change ${account.name}" @click=${() => open(account)}>Change</button></td>
  </tr>`;

async function list() {
  /** @type {{ accounts: Answer.Account[] }} */
  const { accounts } = await getJson(path('accounts'));
  render(accounts.map(row), byId('accounts'));
}

/** @param {Answer.Account | null} account */
const roleBoxes = (account) => ROLES.map((role) => html`
  <label class="choice" for="role-${role}"><input type="checkbox" value=${role} id="role-${role}"
    .checked=${Boolean(account?.roles.includes(role))}> ${words(role)}</label>`);

/** @param {Answer.Account | null} account */
function open(account) {
  changed = account;
  byId('account-title').textContent = account ? `Change ${account.name}` : 'Add account';
  field('account-name').value = account?.name ?? '';
  field('account-name').disabled = Boolean(account);
  field('account-name').required = !account;
  field('account-display').value = account?.displayName ?? '';
  // Made anew: what was ticked in the dialog before is nothing to go by.
  render(nothing, byId('account-roles'));
  render(roleBoxes(account), byId('account-roles'));
  field('account-password').value = '';
  field('account-password').required = !account;
  byId('account-password-label').textContent =
    account ? 'New password (empty: it stays; a new one ends the account’s sessions)' : 'First password';
  field('account-active').checked = !account || account.active;
  show('account-active-label', Boolean(account));
  field('account-reason').value = '';
  field('account-reason').required = Boolean(account);
  for (const id of ['account-reason', 'account-reason-label']) show(id, Boolean(account));
  openDialog('account');
}

const form = () => ({
  displayName: field('account-display').value,
  roles: rolesThat((role) => field(`role-${role}`).checked),
  active: field('account-active').checked,
  password: field('account-password').value,
  reason: field('account-reason').value,
});

async function save() {
  const wanted = form();
  const weakness = wanted.password || !changed ? passwordFault(wanted.password) : '';
  if (weakness) throw new Error(weakness);
  if (changed) {
    const change = accountChange(changed, wanted);
    if (!change) throw new Error('Nothing was changed. Change something, or cancel.');
    await sendJson('PATCH', path('accounts', changed.name), change);
    done(`Account ${changed.name} was changed.`);
  } else {
    const name = field('account-name').value;
    const { displayName, roles, password } = wanted;
    await sendJson('POST', path('accounts'), { name, displayName, roles, password });
    done(`Account ${name} was added.`);
  }
  field('account-password').value = '';
  await list();
}

export async function startPeople() {
  onDialog('account', save);
  // A password does not stay in a dialog that was left.
  dialog('account-dialog').addEventListener('close', () => { field('account-password').value = ''; });
  byId('add-account').addEventListener('click', () => open(null));
  watchCapsLock(field('account-password'), byId('account-caps'));
  show('accounts-section', true);
  await list();
}
