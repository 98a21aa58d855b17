import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { buildWeb } from './buildWeb.ts';

test('the page is built once, whole, however many ask for it', async () => {
  const [one, other] = await Promise.all([buildWeb(() => undefined), buildWeb(() => undefined)]);
  expect(one).toBe(other);
  const told: string[] = [];
  expect(await buildWeb((line) => told.push(line))).toBe(one);
  expect(told).toEqual([]);
  const names = await readdir(one, { recursive: true });
  const scripts = names.filter((name) => name.endsWith('.js'));
  expect(scripts.length).toBeGreaterThanOrEqual(2);
  for (const name of [...scripts, 'index.html']) {
    const bytes = await readFile(join(one, name));
    expect(gunzipSync(await readFile(join(one, `${name}.gz`))).equals(bytes)).toBe(true);
  }
});

test('what is built has its scripts and styles in files of their own', async () => {
  const html = await readFile(join(await buildWeb(() => undefined), 'index.html'), 'utf8');
  expect(html).not.toMatch(/<style|style="|<script(?![^>]*\bsrc=)|\son\w+=/);
  expect(html).not.toMatch(/(?:src|href)="(?:https?:|\/\/|data:)/);
});
