import { chmod, mkdtemp, readFile, readdir, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readBytesCapped, readTextCapped, writeBeside } from './files.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'leeway-files-'));
});
afterEach(() => rm(folder, { recursive: true }));

const codes = (faults: readonly { code: string }[]) => faults.map((f) => f.code);

test('a text file is read without its byte order mark', async () => {
  const path = join(folder, 'a.csv');
  await writeFile(path, '\uFEFFclub,carry\n');
  expect(await readTextCapped(path, 100)).toEqual({ value: 'club,carry\n', faults: [] });
});

test('a file exactly at the cap is read and one byte more is refused', async () => {
  const path = join(folder, 'a.csv');
  await writeFile(path, '12345');
  expect((await readTextCapped(path, 5)).value).toBe('12345');
  expect(await readTextCapped(path, 4)).toEqual({
    faults: [{ code: 'too-large', level: 'refused', file: path, found: '5 bytes', expected: 'at most 4 bytes' }],
  });
});

test('an endless device is refused once it has given more than the cap', async () => {
  expect(codes((await readBytesCapped('/dev/zero', 3e6)).faults)).toEqual(['too-large']);
});

test('a folder, a missing file and text in another encoding are refused', async () => {
  expect(codes((await readTextCapped(folder, 100)).faults)).toEqual(['not-a-file']);
  expect(codes((await readTextCapped(join(folder, 'none'), 100)).faults)).toEqual(['cannot-read']);
  await writeFile(join(folder, 'latin'), Uint8Array.of(0x63, 0xe9));
  expect(codes((await readTextCapped(join(folder, 'latin'), 100)).faults)).toEqual(['not-utf-8']);
});

test('a file is written whole, in folders made for it, and nothing is left beside it', async () => {
  const path = join(folder, 'new', 'player.json');
  expect(await writeBeside(path, '{}', { force: false })).toEqual([]);
  expect(await readFile(path, 'utf8')).toBe('{}');
  expect(await readdir(join(folder, 'new'))).toEqual(['player.json']);
});

test('an existing file needs force, which keeps its mode', async () => {
  const path = join(folder, 'player.json');
  await writeFile(path, 'old');
  await chmod(path, 0o600);
  expect(codes(await writeBeside(path, 'new', { force: false }))).toEqual(['already-there']);
  expect(await readFile(path, 'utf8')).toBe('old');
  expect(await writeBeside(path, 'new', { force: true })).toEqual([]);
  expect(await readFile(path, 'utf8')).toBe('new');
  expect((await stat(path)).mode & 0o777).toBe(0o600);
  expect(await readdir(folder)).toEqual(['player.json']);
});

test('of two writers of one new name, one wins and the other is told', async () => {
  const path = join(folder, 'player.json');
  const both = await Promise.all(['a', 'b'].map((text) => writeBeside(path, text, { force: false })));
  expect(both.flatMap(codes)).toEqual(['already-there']);
  expect(await readdir(folder)).toEqual(['player.json']);
});

test('a symbolic link is written through, not replaced', async () => {
  await writeFile(join(folder, 'real.json'), 'old');
  await symlink(join(folder, 'real.json'), join(folder, 'link.json'));
  expect(await writeBeside(join(folder, 'link.json'), 'new', { force: true })).toEqual([]);
  expect(await readFile(join(folder, 'real.json'), 'utf8')).toBe('new');
});

test('a folder and a device are refused, with force or without', async () => {
  expect(codes(await writeBeside(folder, 'x', { force: true }))).toEqual(['not-a-file']);
  expect(codes(await writeBeside('/dev/null', 'x', { force: true }))).toEqual(['not-a-file']);
});
