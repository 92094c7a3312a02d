import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';

const pom = readFileSync(new URL('../../../pom.xml', import.meta.url), 'utf8');
const { devDependencies } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

test('the modules are checked against the very web parts that the pom serves', () => {
  for (const part of ['lit-html', 'uplot']) {
    assert.equal(devDependencies[part], pom.match(new RegExp(`<${part}.version>(.*?)<`))?.[1], part);
  }
});
