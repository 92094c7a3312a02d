// Concessions that wait for a decision, each with what its approval does.

import { html, nothing } from '/_static/lit-html/lit-html.js';
import { time } from '../page/words.js';
import { sameName } from './names.js';

/** @typedef {(concession: Answer.Concession, approve: boolean, reason: string) => Promise<void>} Decide */

/**
 * @param {Answer.Concession} concession
 * @param {boolean} own whether who reads it asked for it
 * @param {Decide} decide
 */
function decisionForm(concession, own, decide) {
  const reasonId = `concession-reason-${concession.id}`;

  /** @param {SubmitEvent} event */
  async function submit(event) {
    event.preventDefault();
    const pressed = /** @type {HTMLButtonElement | null} */ (event.submitter);
    const form = /** @type {HTMLFormElement} */ (event.currentTarget);
    if (!pressed) return;
    await decide(concession, pressed.value === 'approve', /** @type {HTMLInputElement} */ (form.elements.namedItem(reasonId)).value);
  }

  /**
   * Enter in the reason must not decide by itself.
   *
   * @param {KeyboardEvent} event
   */
  function key(event) {
    if (event.key === 'Enter') event.preventDefault();
  }

  return html`
    <form class="decide" @submit=${submit}>
      <label for=${reasonId}>Reason for the decision</label>
      <input id=${reasonId} autocomplete="off" required maxlength="1000" ?disabled=${own} @keydown=${key}>
      <div class="row">
        <button type="submit" class="main" value="approve" ?disabled=${own}
          aria-label="Approve concession ${concession.id}">Approve</button>
        <button type="submit" class="danger" value="refuse" ?disabled=${own}
          aria-label="Refuse concession ${concession.id}">Refuse</button>
      </div>
      ${own ? html`<p class="hint">You asked for this yourself: another person has to decide.</p>` : nothing}
    </form>`;
}

/**
 * @param {Answer.Concession} concession
 * @param {Answer.Session} who who reads it
 * @param {boolean} mayDecide
 * @param {Decide} decide
 */
export const concessionCard = (concession, who, mayDecide, decide) => html`
  <li>
    <h3>${concession.title}: reel <a href="/#/reel/${concession.reel}">${concession.reel}</a></h3>
    <p>${concession.reason}</p>
    <p><strong>When approved:</strong> ${concession.effect}</p>
    <p class="hint">Concession ${concession.id}, by ${concession.requestedBy}, ${time(concession.requested)}. Not met, or met only
      conditionally: ${concession.requirements.join(', ')}.</p>
    ${mayDecide ? decisionForm(concession, sameName(concession.requestedBy, who.name), decide)
    : html`<p class="hint">A quality manager decides.</p>`}
  </li>`;
