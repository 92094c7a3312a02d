// The tokens of stations and programs.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, dialog, field, show } from '../page/dom.js';
import { done } from '../page/notices.js';
import { status } from '../page/requests.js';
import { getJson, sendJson } from '../page/session.js';
import { options, time, words } from '../page/words.js';
import { onDialog, openDialog } from './form-dialog.js';
import { ROLES } from './roles.js';
import { endOf, tokenState } from './token-state.js';

/** @type {Answer.Token | null} */
let revoked = null;

/** @param {Answer.Token} token */
function row(token) {
  const state = tokenState(token, Date.now());
  return html`
    <tr class=${state === 'in use' ? '' : 'off'}>
      <th scope="row">${token.name}<small>${token.id}</small></th>
      <td>${token.plant || 'every plant'}</td>
      <td>${token.roles.map(words).join(', ')}</td>
      <td>${token.expires ? time(token.expires) : 'never'}</td>
      <td>${state}</td>
      <td>${token.revoked ? nothing
        : html`<button type="button" aria-label="Revoke ${token.name}" @click=${() => openRevoke(token)}>Revoke</button>`}</td>
    </tr>`;
}

async function list() {
  /** @type {{ tokens: Answer.Token[] }} */
  const { tokens } = await getJson(path('tokens'));
  render(tokens.map(row), byId('tokens'));
}

function openAdd() {
  byId('token-form', HTMLFormElement).reset();
  openDialog('token');
}

async function add() {
  const day = field('token-expires').value;
  const token = await sendJson('POST', path('tokens'), {
    name: field('token-name').value,
    role: byId('token-role', HTMLSelectElement).value,
    plant: byId('token-plant', HTMLSelectElement).value,
    ...(day && { expires: endOf(day) }),
  });
  dialog('token-dialog').close();
  showSecret(token.secret);
  await list();
}

/** @param {string} secret shown this once */
function showSecret(secret) {
  field('secret-text').value = secret;
  byId('copied').textContent = '';
  show('secret', true);
  byId('secret').scrollIntoView({ block: 'center' });
  byId('copy').focus();
}

async function copy() {
  field('secret-text').select();
  try {
    await navigator.clipboard.writeText(field('secret-text').value);
    byId('copied').textContent = 'Copied.';
  } catch {
    // No clipboard away from https and localhost, or when the browser forbids it.
    byId('copied').textContent = 'The browser does not let this page copy. The secret is marked: press Ctrl+C.';
    field('secret-text').focus();
  }
}

function hideSecret() {
  field('secret-text').value = '';
  show('secret', false);
  byId('add-token').focus();
}

/** @param {Answer.Token} token */
function openRevoke(token) {
  revoked = token;
  byId('revoke-title').textContent = `Revoke ${token.name}`;
  field('revoke-reason').value = '';
  openDialog('revoke');
}

async function revoke() {
  if (!revoked) return;
  const reason = encodeURIComponent(field('revoke-reason').value);
  await getJson(`${path('tokens', revoked.id)}?reason=${reason}`, { method: 'DELETE' });
  done(`Token ${revoked.name} was revoked.`);
  await list();
}

export async function startTokens() {
  const { plant, plants } = await status();
  render(options(ROLES), byId('token-role'));
  render((plants ?? [plant]).map((one) => html`<option>${one}</option>`), byId('token-plant'));
  onDialog('token', add);
  onDialog('revoke', revoke);
  byId('add-token').addEventListener('click', openAdd);
  byId('copy').addEventListener('click', copy);
  byId('secret-done').addEventListener('click', hideSecret);
  show('tokens-section', true);
  await list();
}
