import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { buildWeb } from '@leeway/web';
import { say } from './say.ts';

const MOST_KB = 120;

test(`all scripts of the page together weigh at most ${MOST_KB} kB gzipped`, async () => {
  const assets = join(await buildWeb(() => undefined), 'assets');
  const scripts = readdirSync(assets).filter((name) => /\.(?:m?js|wasm)$/.test(name));
  const weights = scripts.map((name) => [name, gzipSync(readFileSync(join(assets, name)), { level: 9 }).length / 1000]);
  const sum = weights.reduce((total, [, kb]) => total + Number(kb), 0);
  say(`${weights.map(([name, kb]) => `${name} ${Number(kb).toFixed(1)}`).join(', ')}: ${sum.toFixed(1)} kB`);
  expect(scripts.length).toBeGreaterThanOrEqual(2);
  expect(sum).toBeLessThanOrEqual(MOST_KB);
});
