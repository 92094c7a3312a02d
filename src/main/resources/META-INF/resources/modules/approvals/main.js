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

const ACTIONS = ['release', 'withdraw', 'reissue', 'hold', 'issue', 'change-limits', 'define-products', 'upload', 'register', 'manage-users'];

/** @type {Answer.Session} */
let who;

async function list() {
  /** @type {{ approvals: Answer.Approval[] }} */
  const { approvals } = await getJson(path('approvals') + (field('decided').checked ? '' : '?open=true'));
  // Each card by its request: a reason half typed must not slip to another.
  render(repeat(approvals, (approval) => approval.id, (approval) => card(approval, who, decide)), byId('approvals'));
  show('none', approvals.length === 0);
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
}

start().catch(noticeFault);
