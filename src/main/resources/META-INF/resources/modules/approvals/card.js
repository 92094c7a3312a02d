// One request, with the form to decide on it.

import { html, nothing } from '/_static/lit-html/lit-html.js';
import { time, words } from '../page/words.js';
import { sameName } from './names.js';

/** @typedef {(approval: Answer.Approval, approve: boolean, reason: string) => Promise<void>} Decide */

/**
 * @param {Answer.Approval} approval
 * @param {Answer.Session} who
 * @param {Decide} decide
 */
function decisionForm(approval, who, decide) {
  const own = sameName(approval.requestedBy, who.name);
  const reasonId = `reason-${approval.id}`;
  const noteId = `own-${approval.id}`;

  /** @param {SubmitEvent} event */
  async function submit(event) {
    event.preventDefault();
    const form = /** @type {HTMLFormElement} */ (event.currentTarget);
    const pressed = /** @type {HTMLButtonElement | null} */ (event.submitter);
    if (!pressed) return;
    const buttons = form.querySelectorAll('button');
    buttons.forEach((one) => { one.disabled = true; });
    await decide(approval, pressed.value === 'approve', /** @type {HTMLInputElement} */ (form.elements.namedItem(reasonId)).value);
    buttons.forEach((one) => { one.disabled = false; });
  }

  /**
   * Enter in the reason must not decide by itself: which of the two is for the person to say.
   *
   * @param {KeyboardEvent} event
   */
  function key(event) {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    /** @type {HTMLInputElement} */ (event.currentTarget).form?.querySelector('button')?.focus();
  }

  /**
   * @param {string} label
   * @param {string} value
   * @param {string} look
   */
  const choice = (label, value, look) => html`
    <button type="submit" class=${look} value=${value} aria-label="${label} request ${approval.id}" ?disabled=${own}
      aria-describedby=${own ? noteId : nothing}>${label}</button>`;

  return html`
    <form class="decide" @submit=${submit}>
      <label for=${reasonId}>Reason for the decision</label>
      <input id=${reasonId} autocomplete="off" required maxlength="1000" ?disabled=${own} @keydown=${key}>
      <div class="row">${choice('Approve', 'approve', 'main')} ${choice('Refuse', 'refuse', 'danger')}</div>
      ${own ? html`<p class="hint" id=${noteId}>You asked for this yourself: another person has to decide.</p>` : nothing}
    </form>`;
}

/** @param {Answer.Approval} approval */
const decision = (approval) => html`<p><strong>${approval.approve ? 'Approved' : 'Refused'}</strong> by ${approval.decidedBy},
  ${time(approval.decided ?? '')}: ${approval.decisionReason ?? ''}</p>`;

/**
 * @param {Answer.Approval} approval
 * @param {Answer.Session} who who reads it
 * @param {Decide} decide
 */
export function card(approval, who, decide) {
  const isOpen = typeof approval.approve !== 'boolean';
  const look = approval.approve ? 'pass' : 'fail';
  return html`
    <li class=${isOpen ? '' : look}>
      <h3>${words(approval.action)}: ${approval.subject}</h3>
      <p>${approval.reason}</p>
      <p class="hint">Request ${approval.id}, by ${approval.requestedBy}, ${time(approval.requested)}</p>
      ${isOpen ? decisionForm(approval, who, decide) : decision(approval)}
    </li>`;
}
