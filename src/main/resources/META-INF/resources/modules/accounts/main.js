// Accounts, tokens and the audit trail: each person sees those that the roles open.

import { byId, show } from '../page/dom.js';
import { requireSession } from '../page/header.js';
import { notice, noticeFault } from '../page/notices.js';
import { may } from '../page/session.js';
import { startAudit } from './audit.js';
import { startPeople } from './people.js';
import { startTokens } from './tokens.js';

async function start() {
  const who = await requireSession();
  const manages = may(who, 'manage-users');
  const audits = may(who, 'read-audit');
  document.title = `${manages ? 'Accounts' : 'Audit trail'} · Reelproof`;
  byId('page-title').textContent = manages ? 'Accounts' : 'Audit trail';
  byId('audit-title').textContent = manages ? 'Audit trail' : 'Entries';
  show('page-title', true);
  if (manages) {
    await startPeople();
    await startTokens();
  }
  if (audits) await startAudit();
  if (!manages && !audits) {
    notice('This page is for administrators; quality managers see the audit trail here. Ask an administrator if you need it.');
  }
}

start().catch(noticeFault);
