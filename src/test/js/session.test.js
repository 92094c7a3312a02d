import assert from 'node:assert/strict';
import test from 'node:test';
import { chosenFault, passwordFault } from '../../main/resources/META-INF/resources/modules/session/passwords.js';
import { secondsToWait, spoken } from '../../main/resources/META-INF/resources/modules/session/waiting.js';

test('a password is measured in bytes', () => {
  assert.match(passwordFault('elevenchars'), /at least 12/);
  assert.equal(passwordFault('twelve chars'), '');
  assert.equal(passwordFault('a'.repeat(72)), '');
  assert.match(passwordFault('ä'.repeat(37)), /takes 74 bytes/);
});

test('a password typed twice must be the same', () => {
  assert.match(chosenFault('twelve chars', 'twelve charz'), /differ/);
  assert.equal(chosenFault('twelve chars', 'twelve chars'), '');
  assert.match(chosenFault('short', 'other'), /at least 12/, 'its own fault comes first');
});

test('Retry-After is a number of seconds or a date', () => {
  const now = Date.UTC(2026, 2, 2, 12, 0, 0);
  assert.equal(secondsToWait('30', now), 30);
  assert.equal(secondsToWait('Mon, 02 Mar 2026 12:01:30 GMT', now), 90);
  assert.equal(secondsToWait('Mon, 02 Mar 2026 11:00:00 GMT', now), 1, 'never less than a second');
  assert.equal(secondsToWait('0', now), 1);
  assert.equal(secondsToWait(null, now), 60);
  assert.equal(secondsToWait('soon', now), 60);
});

test('a wait is told in seconds, then in minutes', () => {
  assert.equal(spoken(1), '1 second');
  assert.equal(spoken(119), '119 seconds');
  assert.equal(spoken(120), '2 minutes');
  assert.equal(spoken(121), '3 minutes');
});
