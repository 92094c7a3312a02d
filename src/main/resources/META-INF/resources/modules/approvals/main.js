// Requests that need a second person.

import { repeat } from '/_static/lit-html/directives/repeat.js';
import { render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { button, byId, field, onSubmit, show } from '../page/dom.js';
import { requireSession } from '../page/header.js';
import { done, notice, noticeFault } from '../page/notices.js';
import { getJson, may, sendJson } from '../page/session.js';
import { options } from '../page/words.js';
import { card } from './card.js';
import { concessionCard } from './concessions.js';

/** What the service does when it is approved; anything else it would refuse. */
const ACTIONS = ['release', 'withdraw', 'change-limits'];

/** @type {Answer.Session} */
let who;

async function list() {
  /** @type {{ approvals: Answer.Approval[] }} */
  const { approvals } = await getJson(path('approvals') + (field('decided').checked ? '' : '?open=true'));
  // Each card by its request: a reason half typed must not slip to another.
  render(repeat(approvals, (approval) => approval.id, (approval) => card(approval, who, decide)), byId('approvals'));
  show('none', approvals.length === 0);
}

async function listConcessions() {
  /** @type {{ concessions: Answer.Concession[] }} */
  const { concessions } = await getJson(`${path('concessions')}?open=true`);
  const mayDecide = may(who, 'decide-concession');
  render(repeat(concessions, (one) => one.id, (one) => concessionCard(one, who, mayDecide, decideConcession)), byId('concessions'));
  show('concessions-none', concessions.length === 0);
}

/** @type {import('./concessions.js').Decide} */
async function decideConcession(concession, approve, reason) {
  notice('');
  try {
    await sendJson('POST', path('concessions', concession.id, approve ? 'approval' : 'refusal'), { reason });
    done(`Concession ${concession.id} was ${approve ? 'approved' : 'refused'}.`);
    await listConcessions();
  } catch (fault) {
    noticeFault(fault);
  }
}

/** @type {import('./card.js').Decide} */
async function decide(approval, approve, reason) {
  notice('');
  try {
    await sendJson('POST', path('approvals', approval.id, 'decision'), { approve, reason });
    done(`Request ${approval.id} was ${approve ? 'approved' : 'refused'}.`);
    await list();
  } catch (fault) {
    noticeFault(fault);
  }
}

async function ask() {
  notice('');
  button('ask-send').disabled = true;
  try {
    const asked = await sendJson('POST', path('approvals'), {
      action: byId('ask-action', HTMLSelectElement).value, subject: field('ask-subject').value,
      reason: byId('ask-reason', HTMLTextAreaElement).value,
    });
    byId('ask', HTMLFormElement).reset();
    done(`Request ${asked.id} is open. Another person has to decide on it.`);
    await list();
  } catch (fault) {
    noticeFault(fault);
  } finally {
    button('ask-send').disabled = false;
  }
}

async function start() {
  who = await requireSession();
  if (!may(who, 'approve')) {
    notice('Approvals are for engineers and quality managers.');
    return;
  }
  render(options(ACTIONS), byId('ask-action'));
  show('content', true);
  field('decided').addEventListener('change', () => list().catch(noticeFault));
  onSubmit('ask', ask);
  await list();
  await listConcessions();
}

start().catch(noticeFault);
