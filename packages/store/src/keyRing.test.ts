import { readdirSync, readFileSync, statSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openKeyRing } from './keyRing.ts';
import { newId, noteOf } from './testdata/records.ts';
import { temporaryFolder } from './testdata/temporary.ts';

test('a key is made once, is there for the next who opens, and only this account can read it', () => {
  const folder = join(temporaryFolder(), 'keys');
  const owner = newId();
  const closed = openKeyRing(folder).sealMade(owner).close(noteOf(owner, 'Kept.'));
  const again = openKeyRing(folder);
  expect(again.sealMade(owner).open(closed)).toMatchObject({ body: { text: 'Kept.' } });
  expect([...again.keys().keys()]).toEqual([owner]);
  expect(again.sealFor(newId())).toBeUndefined();
  if (process.platform === 'win32') return;
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  expect(statSync(join(folder, `${owner}.key`)).mode & 0o777).toBe(0o600);
});

test('a destroyed key is nowhere, and destroying it again is harmless', () => {
  const folder = temporaryFolder();
  const owner = newId();
  const ring = openKeyRing(folder);
  const closed = ring.sealMade(owner).close(noteOf(owner, 'Gone.'));
  const key = readFileSync(join(folder, `${owner}.key`));
  ring.destroy(owner);
  ring.destroy(owner);
  expect(readdirSync(folder)).toEqual([]);
  expect(ring.sealFor(owner)).toBeUndefined();
  expect(() => ring.sealMade(owner).open(closed)).toThrow('authenticate');
  ring.add(owner, key);
  expect(ring.sealMade(owner).open(closed)).toMatchObject({ body: { text: 'Gone.' } });
});

test('a key file that is cut short is not taken for a key, nor replaced', () => {
  const folder = temporaryFolder();
  const owner = newId();
  openKeyRing(folder).sealMade(owner);
  truncateSync(join(folder, `${owner}.key`), 31);
  expect(() => openKeyRing(folder).sealMade(owner)).toThrow('cannot be read');
});
