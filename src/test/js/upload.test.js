import assert from 'node:assert/strict';
import test from 'node:test';
import { parcel, parcelFault, partOf } from '../../main/resources/META-INF/resources/modules/reel/parcel.js';
import { outcomeOf } from '../../main/resources/META-INF/resources/modules/reel/sent.js';

/**
 * @param {string} name
 * @param {number} [size]
 */
const named = (name, size = 1) => ({ name, size });

test('one document, alone or with what belongs to it, or a ZIP file that holds it', () => {
  assert.equal(parcelFault([named('R-1.JSON')]), null);
  assert.equal(parcelFault([named('R-1.json'), named('next.csv'), named('pair.s4p'), named('more.zip')]), null);
  assert.equal(parcelFault([named('all.zip')]), null);
});

test('which file is the result is never guessed', () => {
  assert.match(parcelFault([named('a.json'), named('b.json')])?.detail ?? '', /a\.json, b\.json/);
  assert.match(parcelFault([named('next.csv')])?.detail ?? '', /next\.csv/);
  assert.notEqual(parcelFault([named('a.json'), named('b.json'), named('c.zip')]), null);
});

test('what is too large together is not sent', () => {
  const half = 25 * 1024 * 1024;
  assert.equal(parcelFault([named('a.json', half), named('b.csv', half)]), null);
  assert.equal(parcelFault([named('a.json', half), named('b.csv', half + 1)])?.title, 'too large');
});

test('a document alone is sent as it is, more as a form', async () => {
  const document = new File(['{}'], 'R-1.json');
  assert.deepEqual(parcel([document]), { body: document, type: 'application/json' });
  const { body, type } = parcel([document, new File(['1'], 'next.csv')]);
  assert.equal(type, null, 'the browser states the boundary');
  assert.ok(body instanceof FormData);
  const sent = /** @type {File} */ (body.get('result'));
  assert.equal(sent.name, 'R-1.json');
  assert.equal(sent.type, 'application/json');
  assert.equal(/** @type {File} */ (body.get('next.csv')).type, 'text/csv');
  assert.equal(partOf(named('pair.s4p')).type, 'application/octet-stream');
});

test('what the service says becomes one of three outcomes', () => {
  assert.deepEqual(outcomeOf(201, '{"id": "a"}'), { kind: 'taken', isNew: true, record: { id: 'a' } });
  assert.deepEqual(outcomeOf(200, '{"id": "a"}'), { kind: 'taken', isNew: false, record: { id: 'a' } });
  assert.equal(outcomeOf(401, '{}').kind, 'signed-out');
  assert.deepEqual(outcomeOf(422, '{"title": "no"}'), { kind: 'refused', problem: { title: 'no' } });
});

test('an answer that is no problem document is still told', () => {
  for (const text of ['', '<html>', 'null', '3']) {
    assert.deepEqual(outcomeOf(502, text), { kind: 'refused', problem: { title: 'The service answered 502.' } }, text);
  }
});
