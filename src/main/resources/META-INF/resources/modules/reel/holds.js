// A held reel, shown as held.

import { html, render } from '/_static/lit-html/lit-html.js';
import { byId, show } from '../page/dom.js';
import { time } from '../page/words.js';

/** @param {Answer.Reel} reel */
export const isHeld = (reel) => reel.holds.length > 0;

/**
 * What a hold was placed on.
 *
 * @param {Answer.Hold} hold
 */
function target({ machine, run, reel, lot }) {
  if (machine) return `machine ${machine}`;
  if (run) return `run ${run}`;
  return reel ? `reel ${reel}` : `lot ${lot}`;
}

/** @param {Answer.Reel} reel */
export function showHolds(reel) {
  show('held', isHeld(reel));
  render(html`
    <h2>On hold</h2>
    <p>Do not ship this reel; it gets no certificate until the hold is released by somebody other than who placed it.</p>
    <ul>${reel.holds.map((hold) => html`<li><strong>${hold.reason}</strong> (hold ${hold.id} of ${target(hold)}, by
      ${hold.heldBy}, ${time(hold.held)})</li>`)}</ul>`, byId('held'));
}
