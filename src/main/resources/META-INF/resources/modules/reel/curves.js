// The curves of a record, one plot a property.

import { html, nothing, render, svg } from '/_static/lit-html/lit-html.js';
import { path } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { notice, sentence } from '../page/notices.js';
import { isStatus } from '../page/requests.js';
import { getJson } from '../page/session.js';
import { areMany, drawnLimits, limitLine, sweepLine } from './lines.js';
import { sweptProperties } from './swept.js';

const NOT_FOUND = 404;
const KEY_WIDTH = 1.6;

/** @typedef {{ swept: Answer.Sweeps, finding: Answer.Finding }} Plot */

/** @param {import('./lines.js').Line} line */
const keyItem = ({ label, stroke, dash, width }) => html`
  <li><svg width="26" height="8" aria-hidden="true">${svg`<line x1="0" y1="4" x2="26" y2="4" stroke=${stroke}
    stroke-width=${Math.max(width, KEY_WIDTH)} stroke-dasharray=${dash.join(' ')}></line>`}</svg>${label}</li>`;

/** @param {Answer.Sweeps} swept */
function key(swept) {
  const many = areMany(swept.sweeps);
  return html`
    <ul class="key">
      ${many ? nothing : swept.sweeps.map((sweep, index) => keyItem(sweepLine(sweep, index, many)))}
      ${drawnLimits(swept).map((limit, index) => keyItem(limitLine(limit, index)))}
      ${many ? html`<li>${swept.sweeps.length} sweeps</li>` : nothing}
      <li>${swept.axis}</li>
    </ul>`;
}

/** @param {Answer.Finding} finding */
const least = (finding) => (finding.printed
  ? `${finding.outcomeSign} ${finding.outcomeText}; least margin ${finding.printed.margin} ${finding.printed.unit}: ${finding.place}`
  : `${finding.outcomeSign} ${finding.sentence}`);

/** @param {Plot} plot */
const article = ({ swept, finding }) => html`
  <article class="plot ${finding.outcome}">
    <h3>${swept.title}, ${swept.unit}</h3>
    <p>${least(finding)}</p>
    <div class="curves" role="img" aria-label="${swept.title} over frequency with its limit"></div>
    ${key(swept)}
  </article>`;

/**
 * The plot of one property; null where it has no curves.
 *
 * @param {Answer.Record} record
 * @param {string} property
 * @returns {Promise<Plot | null>}
 */
async function read(record, property) {
  try {
    /** @type {Answer.Sweeps} */
    const swept = await getJson(path('records', record.id, 'sweeps', property));
    if (!swept.sweeps.some((sweep) => sweep.frequencies.length > 1)) return null;
    const findings = record.findings.filter((finding) => finding.property === property);
    return { swept, finding: findings.find((finding) => finding.requirement === swept.limit?.requirement) ?? findings[0] };
  } catch (fault) {
    if (isStatus(fault, NOT_FOUND)) return null;
    throw fault;
  }
}

/**
 * @param {Answer.Record} record
 * @param {() => boolean} isShown whether the record still stands on the page
 */
export async function showCurves(record, isShown) {
  const plots = byId('plots');
  // Made anew for each record: a plot belongs to the element that it was drawn into.
  render(nothing, plots);
  show('plots-section', false);
  /** @type {Plot[]} */
  const shown = [];
  try {
    for (const property of sweptProperties(record.findings)) {
      const [{ draw }, plot] = await Promise.all([import('./plot.js'), read(record, property)]);
      if (!isShown()) return;
      if (!plot) continue;
      shown.push(plot);
      render(shown.map(article), plots);
      show('plots-section', true);
      const box = /** @type {HTMLElement} */ (plots.lastElementChild);
      draw(/** @type {HTMLElement} */ (box.querySelector('.curves')), box, plot.swept, plot.finding);
    }
  } catch (fault) {
    if (isShown()) notice(`The curves cannot be shown. ${sentence(fault)}`);
  }
}
