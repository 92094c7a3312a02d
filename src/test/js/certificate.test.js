import assert from 'node:assert/strict';
import test from 'node:test';
import { numberIn } from '../../main/resources/META-INF/resources/modules/certificate/number.js';

test('a number is found in what a scanner gives', () => {
  assert.equal(numberIn(' north-2026-000123 '), 'NORTH-2026-000123');
  assert.equal(numberIn('https://reelproof.invalid/verify.html?number=NORTH-2026-000123'), 'NORTH-2026-000123');
  assert.equal(numberIn(' what '), 'WHAT', 'the service says what it does not know');
  assert.equal(numberIn('  '), '');
});
