import assert from 'node:assert/strict';
import test from 'node:test';
import { endsScan, exactHit, isScanned, nextHit, takesText } from '../../main/resources/META-INF/resources/modules/reel/hits.js';
import { reasonsFirst } from '../../main/resources/META-INF/resources/modules/reel/reasons.js';
import { turns } from '../../main/resources/META-INF/resources/modules/reel/shown.js';

/**
 * @param {string} name
 * @param {string} [match]
 */
const hit = (name, match = 'exact') => /** @type {Answer.Hit} */ ({ kind: 'reel', name, match });

test('arrow keys go around the hits', () => {
  assert.equal(nextHit('ArrowDown', -1, 3), 0);
  assert.equal(nextHit('ArrowDown', 2, 3), 0);
  assert.equal(nextHit('ArrowUp', -1, 3), 2);
  assert.equal(nextHit('ArrowUp', 0, 3), 2);
  assert.equal(nextHit('ArrowUp', 2, 3), 1);
  assert.equal(nextHit('a', 1, 3), 1, 'another key moves nothing');
  assert.equal(nextHit('ArrowDown', -1, 0), -1, 'nothing to move to');
});

test('a part of a number never is that reel', () => {
  assert.equal(exactHit([hit('R-50', 'beginning'), hit('R-51', 'beginning')], 'R-5'), null);
  assert.equal(exactHit([hit('R-5'), hit('R-50', 'beginning')], 'R-5')?.name, 'R-5');
  assert.equal(exactHit([hit('SO-R-5', 'words')], 'R-5'), null);
});

test('case, spaces and dashes tell two apart only where both are there', () => {
  assert.equal(exactHit([hit('R-a')], 'r A')?.name, 'R-a');
  assert.equal(exactHit([hit('R-a'), hit('Ra')], 'Ra')?.name, 'Ra');
  assert.equal(exactHit([hit('R-a'), hit('Ra')], 'r-a'), null, 'which of them is for the person to say');
});

test('a scan begins with a character, never with a key of the browser or a button', () => {
  const plain = { ctrlKey: false, metaKey: false, altKey: false };
  assert.ok(isScanned({ key: 'R', ...plain }));
  for (const key of ['Enter', ' ', 'ArrowDown', 'Shift', 'F5', 'Tab']) assert.ok(!isScanned({ key, ...plain }), key);
  assert.ok(!isScanned({ key: 'c', ...plain, ctrlKey: true }));
  assert.ok(!isScanned({ key: 'c', ...plain, metaKey: true }));
});

test('a Tab that follows at once ends a scan; a person may leave the field with it', () => {
  assert.ok(endsScan({ key: 'Tab', shiftKey: false }, 5));
  assert.ok(!endsScan({ key: 'Tab', shiftKey: false }, 400));
  assert.ok(!endsScan({ key: 'Tab', shiftKey: true }, 5));
  assert.ok(!endsScan({ key: 'x', shiftKey: false }, 5));
});

test('what is typed into a field for text or a number stays there', () => {
  assert.ok(takesText({ type: 'number' }));
  assert.ok(takesText({ type: 'text' }));
  assert.ok(takesText({ type: 'search' }));
  for (const other of [{ type: 'file' }, { type: 'button' }, {}, null]) assert.ok(!takesText(other));
});

test('reasons come gravest first and keep their order; a plain pass is none', () => {
  const findings = /** @type {Answer.Finding[]} */ ([
    { property: 'a', outcome: 'conditional-pass' }, { property: 'b', outcome: 'pass' }, { property: 'c', outcome: 'fail' },
    { property: 'd', outcome: 'not-tested' }, { property: 'e', outcome: 'conditional-fail' }, { property: 'f', outcome: 'fail' },
  ]);
  assert.deepEqual(reasonsFirst(findings).map((finding) => finding.property), ['c', 'f', 'e', 'd', 'a']);
});

test('what was begun before is no longer wanted', () => {
  const openings = turns();
  const first = openings.next();
  assert.ok(first());
  const second = openings.next();
  assert.ok(!first());
  assert.ok(second());
});
