// How the lines of a plot look: told apart by colour and by dashes, limits by their weight.

const COLOURS = ['#005f9e', '#c2570c', '#00795a', '#7a3b8f', '#8a6d00', '#3f4c57'];
const DASHES = [[], [6, 3], [2, 3], [9, 3, 2, 3]];
const THIN = 0.8;
const USUAL = 1.2;
const HEAVY = 3;

/** From so many on, lines are thin and have no key of their own. */
const MANY = 12;

export const INK = '#15202b';

/**
 * @typedef {object} Line
 * @property {string} label
 * @property {string} stroke
 * @property {number[]} dash
 * @property {number} width
 */

/**
 * The limits that can be drawn against the sweeps.
 *
 * @param {Answer.Sweeps} swept
 */
export const drawnLimits = ({ limits, unit }) => limits.filter((limit) => limit.frequencies.length > 0 && limit.unit === unit);

/** @param {Answer.Sweep[]} sweeps */
export const areMany = (sweeps) => sweeps.length > MANY;

/**
 * A pair has its colour; its partner, else its end, has its dashes.
 *
 * @param {Answer.Sweep} sweep
 * @param {number} index
 * @param {boolean} many
 * @returns {Line}
 */
export function sweepLine(sweep, index, many) {
  const colour = sweep.pair ? sweep.pair - 1 : index;
  const farEnd = sweep.end === 'far' ? 1 : 0;
  const dash = sweep.partner ? sweep.partner - 1 : farEnd;
  return {
    label: sweep.label,
    stroke: COLOURS[colour % COLOURS.length],
    dash: DASHES[dash % DASHES.length],
    width: many ? THIN : USUAL,
  };
}

/**
 * @param {Answer.SweptLimit} limit
 * @param {number} index
 * @returns {Line}
 */
export const limitLine = (limit, index) => ({ label: limit.label, stroke: INK, dash: DASHES[index % DASHES.length], width: HEAVY });
