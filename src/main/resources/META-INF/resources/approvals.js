// Requests that need a second person.

import { byId, done, element, getJson, may, notice, path, requireSession, sendJson, time, words } from './page.js';

const ACTIONS = ['release', 'withdraw', 'reissue', 'hold', 'issue', 'change-limits', 'define-products', 'upload', 'register', 'manage-users'];

let who = null;

// Names differ neither by case nor by the form of their characters.
const folded = (name) => name.normalize('NFKC').toLowerCase();

function decisionForm(approval) {
  const own = folded(approval.requestedBy) === folded(who.name);
  const reason = element('input', { id: `reason-${approval.id}`, autocomplete: 'off', required: '', maxlength: '1000' });
  const note = element('p', { class: 'hint', id: `own-${approval.id}` }, 'You asked for this yourself: another person has to decide.');
  const buttons = [['Approve', true, 'main'], ['Refuse', false, 'danger']].map(([label, approve, look]) => {
    const button = element('button', { type: 'submit', class: look, 'aria-label': `${label} request ${approval.id}` }, label);
    button.addEventListener('click', () => { form.dataset.approve = String(approve); });
    if (own) {
      button.disabled = true;
      button.setAttribute('aria-describedby', note.id);
    }
    return button;
  });
  reason.disabled = own;
  const form = element('form', { class: 'decide' },
    element('label', { for: reason.id }, 'Reason for the decision'), reason, element('div', { class: 'row' }, ...buttons), own ? note : null);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    decide(approval, form.dataset.approve === 'true', reason.value, buttons);
  });
  // Enter in the reason must not decide by itself: which of the two is for the person to say.
  reason.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      buttons[0].focus();
    }
  });
  return form;
}

function card(approval) {
  const open = approval.approve === null || approval.approve === undefined;
  return element('li', { class: open ? '' : approval.approve ? 'pass' : 'fail' },
    element('h3', {}, `${words(approval.action)}: ${approval.subject}`),
    element('p', {}, approval.reason),
    element('p', { class: 'hint' }, `Request ${approval.id}, by ${approval.requestedBy}, `, time(approval.requested)),
    open ? decisionForm(approval)
      : element('p', {}, element('strong', {}, approval.approve ? 'Approved' : 'Refused'), ` by ${approval.decidedBy}, `, time(approval.decided), `: ${approval.decisionReason || ''}`));
}

async function show() {
  const { approvals } = await getJson(path('approvals') + (byId('decided').checked ? '' : '?open=true'));
  byId('approvals').replaceChildren(...approvals.map(card));
  byId('none').hidden = approvals.length > 0;
}

async function decide(approval, approve, reason, buttons) {
  notice('');
  buttons.forEach((button) => { button.disabled = true; });
  try {
    await sendJson('POST', path('approvals', approval.id, 'decision'), { approve, reason });
    done(`Request ${approval.id} was ${approve ? 'approved' : 'refused'}.`);
    await show();
  } catch (e) {
    buttons.forEach((button) => { button.disabled = false; });
    notice(e.message);
  }
}

byId('decided').addEventListener('change', () => show().catch((e) => notice(e.message)));
byId('ask').addEventListener('submit', async (event) => {
  event.preventDefault();
  notice('');
  byId('ask-send').disabled = true;
  try {
    const asked = await sendJson('POST', path('approvals'),
      { action: byId('ask-action').value, subject: byId('ask-subject').value, reason: byId('ask-reason').value });
    byId('ask').reset();
    done(`Request ${asked.id} is open. Another person has to decide on it.`);
    await show();
  } catch (e) {
    notice(e.message);
  } finally {
    byId('ask-send').disabled = false;
  }
});

async function start() {
  who = await requireSession();
  if (!may(who, 'approve')) {
    notice('Approvals are for engineers and quality managers.');
    return;
  }
  byId('ask-action').replaceChildren(...ACTIONS.map((action) => element('option', { value: action }, words(action))));
  byId('content').hidden = false;
  await show();
}

start().catch((e) => notice(e.message));
