// Why a file was not taken.

import { html, nothing, render } from '/_static/lit-html/lit-html.js';
import { signInAddress } from '../page/addresses.js';
import { byId, show } from '../page/dom.js';
import { shown } from './shown.js';
import { showVerdict } from './verdict.js';

export const clearFaults = () => show('faults', false);

/** @param {Answer.Problem} problem */
function details({ detail, errors = [] }) {
  return errors.length
    ? html`<ul>${errors.map(({ where, message }) => html`<li><code>${where ?? ''}</code> ${message}</li>`)}</ul>`
    : html`<p>${detail ?? ''}</p>`;
}

/**
 * @param {string} number the reel that the file was meant for
 * @param {Answer.Problem} problem
 * @param {boolean} [isSignedOut]
 */
export function showFaults(number, problem, isSignedOut = false) {
  const { reel, record, who } = shown;
  // What stands below must not be read as the verdict of this file.
  if (reel && record && reel.reel === number) showVerdict({ reel, record, who, isRefused: true });
  render(html`
    <h2>Not taken for reel ${number}: ${problem.title || 'the file has a fault'}</h2>
    ${details(problem)}
    ${isSignedOut ? html`<p><a href=${signInAddress(location)}>Sign in</a></p>` : nothing}`, byId('faults'));
  show('faults', true);
  byId('faults').scrollIntoView({ block: 'nearest' });
}
