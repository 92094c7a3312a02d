// One plot: sweeps against their limits over frequency, with a ring where the margin is least.

import uPlot from '/webjars/uplot/dist/uPlot.esm.js';
import { frequencyLabels, joinedAxis, spread, valueLabels } from './axis.js';
import { INK, areMany, drawnLimits, limitLine, sweepLine } from './lines.js';

const HEIGHT = 250;
const LEAST_WIDTH = 300;
const X_AXIS = 34;
const Y_AXIS = 46;
const DOT = 12;
const RING_RADIUS = 7;
const RING_WIDTH = 2;
const FAILED = '#a3180f';

/**
 * A limit at one frequency is a dot.
 *
 * @param {Answer.SweptLimit} limit
 */
const points = (limit) => ({ show: limit.frequencies.length === 1, size: DOT, fill: INK });

/**
 * A ring around the finding's figure.
 *
 * @param {uPlot} chart
 * @param {Answer.Finding} finding
 */
function ring(chart, finding) {
  if (!finding.frequency || finding.value === null) return;
  const { ctx } = chart;
  ctx.save();
  ctx.lineWidth = RING_WIDTH * devicePixelRatio;
  ctx.strokeStyle = finding.failing ? FAILED : INK;
  ctx.beginPath();
  ctx.arc(chart.valToPos(finding.frequency.value, 'x', true), chart.valToPos(finding.value, 'y', true),
    RING_RADIUS * devicePixelRatio, 0, 2 * Math.PI);
  ctx.stroke();
  ctx.restore();
}

/**
 * Every line with its values on the joint axis.
 *
 * @param {Answer.Sweeps} swept
 * @param {number[]} axis
 */
function lines(swept, axis) {
  const many = areMany(swept.sweeps);
  const curves = swept.sweeps.map((sweep, index) => ({
    series: { ...sweepLine(sweep, index, many), spanGaps: true, points: { show: false } },
    values: spread(axis, sweep.frequencies, sweep.corrected),
  }));
  const limits = drawnLimits(swept).flatMap((limit, index) => [limit.upper, limit.lower].filter((bound) => bound !== null)
    .map((bound) => ({
      series: { ...limitLine(limit, index), spanGaps: true, points: points(limit) },
      values: spread(axis, limit.frequencies, bound),
    })));
  return [...curves, ...limits];
}

/**
 * Draws into an element, as wide as the box around it, until it is taken away.
 *
 * @param {HTMLElement} target
 * @param {HTMLElement} box
 * @param {Answer.Sweeps} swept
 * @param {Answer.Finding} finding
 */
export function draw(target, box, swept, finding) {
  const axis = joinedAxis([...swept.sweeps, ...drawnLimits(swept)]);
  const drawn = lines(swept, axis);
  const width = () => Math.max(LEAST_WIDTH, target.clientWidth);
  const chart = new uPlot({
    width: width(),
    height: HEIGHT,
    legend: { show: false },
    cursor: { drag: { x: false, y: false } },
    scales: { x: { time: false, distr: 3, range: [axis[0], axis[axis.length - 1]] } },
    axes: [
      { size: X_AXIS, filter: (_, ticks) => ticks, values: (_, ticks) => frequencyLabels(axis, ticks) },
      { size: Y_AXIS, values: (_, ticks) => valueLabels(ticks) },
    ],
    series: [{}, ...drawn.map(({ series }) => series)],
    hooks: { draw: [(drawing) => ring(drawing, finding)] },
  }, [axis, ...drawn.map(({ values }) => values)], target);
  const resizing = new ResizeObserver(() => {
    if (!box.isConnected) {
      resizing.disconnect();
      chart.destroy();
    } else if (chart.width !== width()) {
      chart.setSize({ width: width(), height: HEIGHT });
    }
  });
  resizing.observe(box);
}
