// Who did what, newest first.

import { html, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, field, onSubmit, show } from '../page/dom.js';
import { notice, noticeFault } from '../page/notices.js';
import { getJson } from '../page/session.js';
import { time, words } from '../page/words.js';
import { auditFilter, detailLines, shownLine } from './audit-words.js';

const AT_ONCE = 50;

/** @type {Record<string, string>} */
let filter = {};

/** @type {Answer.AuditEntry[]} */
let shown = [];

/** @param {Answer.AuditEntry} entry */
const row = (entry) => html`
  <tr>
    <td class="u">${time(entry.at)}</td>
    <td>${entry.actor}<small>${entry.actorKind === 'none' ? 'not signed in' : entry.actorKind}</small></td>
    <td>${entry.from ?? ''}</td>
    <td>${words(entry.action)}</td>
    <td class="break">${entry.subject ?? ''}</td>
    <td class="break">${entry.reason ?? ''}${detailLines(entry.details).map((line) => html`<small>${line}</small>`)}</td>
  </tr>`;

/** @param {boolean} older whether those that follow what is shown are wanted too */
async function list(older) {
  const query = new URLSearchParams({ ...filter, limit: String(AT_ONCE) });
  const last = shown.at(-1);
  if (older && last) query.set('before', String(last.id));
  /** @type {{ entries: Answer.AuditEntry[] }} */
  const { entries } = await getJson(`${path('audit')}?${query}`);
  shown = older ? [...shown, ...entries] : entries;
  const isAll = entries.length < AT_ONCE;
  render(shown.map(row), byId('audit'));
  show('older', !isAll);
  byId('audit-state').textContent = shownLine(shown.length, isAll);
}

/** @param {Record<string, string>} wanted */
function look(wanted) {
  filter = wanted;
  notice('');
  list(false).catch(noticeFault);
}

export async function startAudit() {
  onSubmit('audit-filter', () => look(auditFilter({
    subject: field('audit-subject').value, actor: field('audit-actor').value, action: field('audit-action').value,
  })));
  byId('audit-filter').addEventListener('reset', () => look({}));
  byId('older').addEventListener('click', () => list(true).catch(noticeFault));
  show('audit-section', true);
  await list(false);
}
