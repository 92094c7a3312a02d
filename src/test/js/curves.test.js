import assert from 'node:assert/strict';
import test from 'node:test';
import { frequencyLabels, joinedAxis, spread, valueLabels } from '../../main/resources/META-INF/resources/modules/reel/axis.js';
import { areMany, drawnLimits, limitLine, sweepLine } from '../../main/resources/META-INF/resources/modules/reel/lines.js';
import { sweptProperties } from '../../main/resources/META-INF/resources/modules/reel/swept.js';

test('axes are joined: each frequency once, rising by value', () => {
  assert.deepEqual(joinedAxis([{ frequencies: [1, 10, 100] }, { frequencies: [2, 10, 9] }]), [1, 2, 9, 10, 100]);
  assert.deepEqual(joinedAxis([]), []);
});

test('a curve keeps its values and has gaps elsewhere', () => {
  assert.deepEqual(spread([1, 2, 10], [1, 10], [5, 7]), [5, undefined, 7]);
  assert.deepEqual(spread([1, 2], [1], [0]), [0, undefined], 'nought is a value');
});

test('1, 2 and 5 of each decade are labelled; all within less than a decade', () => {
  assert.deepEqual(frequencyLabels([1, 100], [1, 2, 3, 5, 10, 20, 40, 50]), ['1', '2', '', '5', '10', '20', '', '50']);
  assert.deepEqual(frequencyLabels([1, 9], [1, 2, 3, 4]), ['1', '2', '3', '4']);
  assert.deepEqual(valueLabels([-20, 0, 2.5]), ['−20', '0', '2.5']);
});

/** @param {Partial<Answer.Sweep>} parts */
const sweep = (parts) =>
  ({ label: '', pair: null, partner: null, end: null, frequencies: [], corrected: [], ...parts });

test('lines of one pair share a colour, and differ by dashes', () => {
  const near = sweepLine(sweep({ pair: 2, end: 'near' }), 0, false);
  const far = sweepLine(sweep({ pair: 2, end: 'far' }), 1, false);
  assert.equal(near.stroke, far.stroke);
  assert.notDeepEqual(near.dash, far.dash);
  assert.notEqual(sweepLine(sweep({ pair: 1 }), 0, false).stroke, near.stroke);
  assert.notDeepEqual(sweepLine(sweep({ pair: 1, partner: 2 }), 0, false).dash, sweepLine(sweep({ pair: 1, partner: 3 }), 1, false).dash);
});

test('a limit is heavier than any sweep, and many sweeps are thin', () => {
  const limit = limitLine({ requirement: '', label: '', unit: '', frequencies: [], upper: null, lower: null }, 0);
  assert.ok(limit.width > sweepLine(sweep({}), 0, false).width);
  assert.ok(sweepLine(sweep({}), 0, false).width > sweepLine(sweep({}), 0, true).width);
  assert.ok(!areMany(new Array(12).fill(sweep({}))));
  assert.ok(areMany(new Array(13).fill(sweep({}))));
});

test('only limits in the unit of the sweeps are drawn', () => {
  const limit = { requirement: 'a', label: '', unit: 'dB', frequencies: [1], upper: [2], lower: null };
  const swept = { property: '', title: '', unit: 'dB', axis: '', sweeps: [], limit: null,
    limits: [limit, { ...limit, unit: 'dB/100 m' }, { ...limit, frequencies: [], upper: [] }] };
  assert.deepEqual(drawnLimits(swept), [limit]);
});

test('curves are asked for where something was measured along frequency', () => {
  const judged = { property: 'next', frequency: { value: 1, unit: 'MHz' }, swept: true, printed: {}, obstacles: [] };
  const short = { property: 'fext', frequency: null, swept: true, printed: null, obstacles: [{ kind: 'range-not-spanned' }] };
  const absent = { property: 'tcl', frequency: null, swept: true, printed: null, obstacles: [{ kind: 'no-data' }] };
  const reading = { property: 'conductor-resistance', frequency: null, swept: false, printed: null, obstacles: [{ kind: 'pair-missing' }] };
  const findings = /** @type {Answer.Finding[]} */ (/** @type {unknown} */ ([judged, judged, short, absent, reading]));
  assert.deepEqual(sweptProperties(findings), ['next', 'fext']);
});
