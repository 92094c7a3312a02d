import assert from 'node:assert/strict';
import test from 'node:test';
import { nextAddress, path, signInAddress } from '../../main/resources/META-INF/resources/modules/page/addresses.js';

const HERE = 'https://reelproof.invalid';

test('each part of an address is made safe for a path', () => {
  assert.equal(path('reels', 'R/1 ü', 'tests'), '/api/v1/reels/R%2F1%20%C3%BC/tests');
});

test('the sign-in page leads back to the whole address', () => {
  const address = signInAddress({ pathname: '/', search: '?a=1', hash: '#/reel/R-1' });
  assert.equal(address, '/sign-in.html?next=%2F%3Fa%3D1%23%2Freel%2FR-1');
  assert.equal(nextAddress(new URL(address, HERE).searchParams.get('next') ?? '', HERE), `${HERE}/?a=1#/reel/R-1`);
});

test('sign-in leads to no other service, and not to itself', () => {
  for (const next of ['//elsewhere.invalid/', '/\\elsewhere.invalid/', 'https://elsewhere.invalid/', 'data:text/html,x',
    'accounts.html', '', '/sign-in.html?next=/', 'http://[']) {
    assert.equal(nextAddress(next, HERE), `${HERE}/`, next);
  }
  assert.equal(nextAddress('/accounts.html', HERE), `${HERE}/accounts.html`);
});
