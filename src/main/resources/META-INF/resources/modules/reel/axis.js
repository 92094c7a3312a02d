// One frequency axis for all curves of a plot.

/**
 * The union of the frequencies of several curves, rising.
 *
 * @param {{ frequencies: number[] }[]} curves
 */
export const joinedAxis = (curves) => [...new Set(curves.flatMap((curve) => curve.frequencies))].sort((a, b) => a - b);

/**
 * Values spread over the joint axis; undefined where the curve has none, so that a gap joins its neighbours.
 *
 * @param {number[]} axis
 * @param {number[]} frequencies
 * @param {number[]} values
 * @returns {(number | undefined)[]}
 */
export function spread(axis, frequencies, values) {
  const at = new Map(frequencies.map((frequency, index) => [frequency, values[index]]));
  return axis.map((frequency) => at.get(frequency));
}

/**
 * The labels along a logarithmic axis: all where it spans less than a decade, else 1, 2 and 5 of each.
 *
 * @param {number[]} axis
 * @param {number[]} ticks
 */
export function frequencyLabels(axis, ticks) {
  const underADecade = axis[axis.length - 1] < 10 * axis[0];
  return ticks.map((tick) => (underADecade || /^[125]e/.test(tick.toExponential()) ? String(Number(tick.toPrecision(3))) : ''));
}

/** @param {number[]} ticks */
export const valueLabels = (ticks) => ticks.map((tick) => String(tick).replace('-', '−'));
