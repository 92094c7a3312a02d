// Where a figure comes from.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, dialog } from '../page/dom.js';
import { noticeFault } from '../page/notices.js';
import { getJson } from '../page/session.js';

/** @param {Answer.Step} step */
const stepItem = ({ title, detail, printed, source }) => html`
  <li>
    <span class="title">${title}</span>
    <span class="detail">${detail}</span>
    <span class="n">${printed}</span>
    ${source ? html`<span class="source">Source: ${source}</span>` : nothing}
  </li>`;

/**
 * What stands in the way of judging it, and what there is to say beside its figure.
 *
 * @param {Answer.Finding} finding
 */
function remarks({ obstacles, moreObstacles, remark, leastProbable }) {
  const lines = [...obstacles.map((obstacle) => obstacle.sentence), moreObstacles ? `and ${moreObstacles} more` : '', remark,
    leastProbable?.sentence].filter(Boolean);
  return lines.length ? html`<ul class="explain-reason">${lines.map((line) => html`<li>${line}</li>`)}</ul>` : nothing;
}

/** @param {Answer.Finding} finding */
const explanation = (finding) => html`
  <h2 id="explain-title">${finding.title}: where the figure comes from</h2>
  ${remarks(finding)}
  <ol class="steps">${(finding.explanation ?? []).map(stepItem)}</ol>
  ${finding.decisionRule ? html`<p class="hint">Decision rule: ${finding.decisionRule}.</p>` : nothing}`;

/**
 * @param {Answer.Record} record
 * @param {Answer.Finding} finding
 */
export async function explain(record, finding) {
  try {
    const found = await getJson(path('records', record.id, 'findings', finding.requirement || finding.property));
    render(explanation(found), byId('explanation'));
    dialog('explain').showModal();
  } catch (fault) {
    noticeFault(fault);
  }
}
