// Why the verdict is what it is, and what every requirement came to.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { byId, show } from '../page/dom.js';
import { explain } from './explain.js';
import { reasonsFirst } from './reasons.js';

/** @param {Answer.Finding} finding */
const caution = (finding) => (finding.caution ? html`<span class="caution">${finding.caution}</span>` : nothing);

/** @param {Answer.Finding} finding */
const reason = (finding) => html`
  <li class=${finding.outcome}>
    <strong>${finding.outcomeSign} ${finding.title}</strong>
    <span class="plain">(${finding.plain}):</span>
    ${finding.sentence}${caution(finding)}
  </li>`;

/** @param {Answer.Record} record */
export function showReasons(record) {
  const reasons = reasonsFirst(record.findings);
  show('reasons-section', reasons.length > 0);
  render(reasons.map(reason), byId('reasons'));
  render(record.nextSteps.map((step) => html`<li>${step}</li>`), byId('next-step'));
}

/**
 * Enter and the space bar explain a line; arrow keys move between lines.
 *
 * @param {KeyboardEvent} event
 * @param {() => void} open
 */
function rowKey(event, open) {
  const line = /** @type {HTMLElement} */ (event.currentTarget);
  const neighbour = { ArrowDown: line.nextElementSibling, ArrowUp: line.previousElementSibling }[event.key];
  if (event.key === 'Enter' || event.key === ' ') open();
  else if (neighbour instanceof HTMLElement) neighbour.focus();
  else return;
  event.preventDefault();
}

/**
 * The figures of a line as they are printed; empty where there is none.
 *
 * @param {Answer.Printed | null} printed
 */
const figures = (printed) => (printed ? html`
  <td class="n">${printed.value}</td>
  <td class="n">${printed.senseSign} ${printed.limit}${printed.unit ? html`<small>${printed.unit}</small>` : nothing}</td>
  <td class="n">${printed.margin}</td>
  <td class="n">${printed.uncertainty}${printed.probability ? html`<small>conforms: ${printed.probability}</small>` : nothing}</td>`
  : html`<td class="n"></td><td class="n"></td><td class="n"></td><td class="n"></td>`);

/**
 * @param {Answer.Record} record
 * @param {Answer.Finding} finding
 */
function row(record, finding) {
  const open = () => explain(record, finding);
  return html`
    <tr class=${finding.outcome} tabindex="0" @click=${open} @keydown=${(/** @type {KeyboardEvent} */ event) => rowKey(event, open)}>
      <td><strong>${finding.title}</strong><small>${finding.note}</small>${caution(finding)}</td>
      <td class="tag ${finding.outcome}">${finding.outcomeSign} ${finding.outcomeText}</td>
      ${figures(finding.printed)}
      <td>${finding.printed ? finding.place : nothing}</td>
      <td class="n points">${finding.points}</td>
    </tr>`;
}

/** @param {Answer.Record} record */
export const showFindings = (record) => render(record.findings.map((finding) => row(record, finding)), byId('requirements'));
