import assert from 'node:assert/strict';
import test from 'node:test';
import { auditFilter, detailLines, shownLine } from '../../main/resources/META-INF/resources/modules/accounts/audit-words.js';
import { accountChange } from '../../main/resources/META-INF/resources/modules/accounts/change.js';
import { endOf, tokenState } from '../../main/resources/META-INF/resources/modules/accounts/token-state.js';
import { sameName } from '../../main/resources/META-INF/resources/modules/approvals/names.js';

const ACCOUNT = { name: 'anna', displayName: 'Anna', roles: ['engineer', 'technician'], active: true, demo: false };
const AS_IT_IS = { displayName: 'Anna', roles: ['technician', 'engineer'], active: true, password: '', reason: 'why' };

test('a form that changes nothing is no change, whatever its reason', () => {
  assert.equal(accountChange(ACCOUNT, AS_IT_IS), null);
});

test('only what differs is sent, with the reason', () => {
  assert.deepEqual(accountChange(ACCOUNT, { ...AS_IT_IS, active: false }), { active: false, reason: 'why' });
  assert.deepEqual(accountChange(ACCOUNT, { ...AS_IT_IS, roles: [] }), { roles: [], reason: 'why' });
  assert.deepEqual(accountChange(ACCOUNT, { ...AS_IT_IS, password: 'a new passphrase' }),
    { password: 'a new passphrase', reason: 'why' });
});

test('a token is revoked, expired or in use', () => {
  const token = { id: '1', name: 'bench', plant: null, roles: [], expires: '2026-03-02T12:00:00Z', revoked: null };
  const noon = Date.parse('2026-03-02T12:00:00Z');
  assert.equal(tokenState(token, noon - 1), 'in use');
  assert.equal(tokenState(token, noon), 'expired');
  assert.equal(tokenState({ ...token, expires: null }, noon), 'in use');
  assert.equal(tokenState({ ...token, revoked: '2026-03-01T12:00:00Z' }, noon - 1), 'revoked');
});

test('a token holds to the end of its day, where the person is', () => {
  assert.equal(endOf('2026-03-02'), new Date(2026, 2, 2, 23, 59, 59).toISOString());
});

test('the filter leaves out empty fields and takes an action in words', () => {
  assert.deepEqual(auditFilter({ subject: ' ', actor: ' anna ', action: 'Token revoked' }), { actor: 'anna', action: 'token-revoked' });
  assert.deepEqual(auditFilter({ subject: '', actor: '', action: '' }), {});
});

test('details are told a line each, whatever they hold', () => {
  assert.deepEqual(detailLines({ 'new-roles': ['a'], count: 0, note: null }), ['new roles: ["a"]', 'count: 0', 'note: null']);
  assert.deepEqual(detailLines(null), []);
});

test('it is said how much of the trail is shown', () => {
  assert.equal(shownLine(0, true), 'No entry fits.');
  assert.equal(shownLine(1, true), '1 entry shown, newest first. There are no older ones.');
  assert.equal(shownLine(50, false), '50 entries shown, newest first.');
});

test('names differ neither by case nor by the form of their characters', () => {
  assert.ok(sameName('Åse', 'a\u030ase'));
  assert.ok(!sameName('anna', 'anne'));
});
