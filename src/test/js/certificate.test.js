import assert from 'node:assert/strict';
import test from 'node:test';
import { hexadecimal, numberFor, numberIn } from '../../main/resources/META-INF/resources/modules/certificate/number.js';

test('a number is found in what a scanner gives', () => {
  assert.equal(numberIn(' north-2026-000123 '), 'NORTH-2026-000123');
  assert.equal(numberIn('https://reelproof.invalid/verify.html?number=NORTH-2026-000123'), 'NORTH-2026-000123');
  assert.equal(numberIn(' what '), 'WHAT', 'the service says what it does not know');
  assert.equal(numberIn('  '), '');
});

test('a file is compared with the number typed, else with that of its name', () => {
  assert.equal(numberFor('north-2026-000123', 'NORTH-2026-000999.pdf'), 'NORTH-2026-000123');
  assert.equal(numberFor('', 'copy of north-2026-000999 (1).pdf'), 'NORTH-2026-000999');
  assert.equal(numberFor('', 'altered.pdf'), '');
});

test('a digest is told in hexadecimal', () => {
  assert.equal(hexadecimal(new Uint8Array([0, 15, 255]).buffer), '000fff');
});
