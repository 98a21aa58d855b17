import { execFileSync } from 'node:child_process';
import { readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { backUp } from '../backup.ts';
import { put } from '../put.ts';
import { get, list } from '../read.ts';
import { DiskFull } from '../diskFull.ts';
import { openStore } from '../store.ts';
import { prepareFolder } from '../testdata/preparedFolder.ts';
import { newId, noteOf } from '../testdata/records.ts';
import { temporaryFolder, temporaryMemoryFolder } from '../testdata/temporary.ts';

/** Only root on Linux may make a small disk. */
const canMount = process.platform === 'linux' && process.getuid?.() === 0;

/** A disk of so many megabytes, in memory; it goes when the test has finished. */
function smallDisk(megabytes: number): string {
  const folder = temporaryFolder();
  execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'leeway-small', folder]);
  onTestFinished(() => void execFileSync('umount', ['-l', folder]));
  return folder;
}

const bytesFree = (folder: string): number => {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
};

const openOrThrow = async (folder: string) => {
  const { value, faults } = await openStore({ folder });
  if (value === undefined) throw new Error(JSON.stringify(faults));
  return value;
};

describe.skipIf(!canMount)('on a disk without room', { timeout: 120_000 }, () => {
  test('a record is refused in one line, nothing of it is kept, and it is taken when there is room', async () => {
    const folder = smallDisk(64);
    const owner = newId();
    await prepareFolder(folder);
    const store = await openOrThrow(folder);
    const kept: string[] = [];
    const longNote = () => noteOf(owner, Array.from({ length: 400 }, newId).join(' '));
    for (;;) {
      const batch = Array.from({ length: 40 }, longNote);
      const { value, faults } = await put(store, batch);
      if (value === undefined) {
        expect(faults).toMatchObject([{ code: 'disk-full', level: 'refused' }]);
        for (const { id } of batch) expect(await get(store, owner, id)).toBeUndefined();
        break;
      }
      kept.push(...batch.map(({ id }) => id));
    }
    expect(kept.length).toBeGreaterThan(100);
    expect((await list(store, { owner, kind: 'note' })).map(({ id }) => id)).toEqual(kept);
    execFileSync('mount', ['-o', 'remount,size=96m', folder]);
    expect((await put(store, [longNote()])).faults).toEqual([]);
    await store.close();
    const again = await openOrThrow(folder);
    expect(await list(again, { owner, kind: 'note' })).toHaveLength(kept.length + 1);
    await again.close();
  });

  test('an engine stopped in the middle of its journal is replaced, and has lost nothing', async () => {
    const folder = smallDisk(96);
    const owner = newId();
    await prepareFolder(folder);
    const store = await openOrThrow(folder);
    const note = noteOf(owner, 'Before.');
    await put(store, [note]);
    const ballast = join(folder, 'ballast');
    writeFileSync(ballast, Buffer.alloc(bytesFree(folder) - 2 ** 18));
    const fillJournal = async () => {
      for (let i = 0; i < 1000; i++)
        await store.database.query(`SELECT pg_logical_emit_message(true, 'fill', repeat('x', 200000))`);
    };
    await expect(fillJournal()).rejects.toThrow(DiskFull);
    expect((await put(store, [noteOf(owner, 'No room.')])).faults).toMatchObject([{ code: 'disk-full' }]);
    rmSync(ballast);
    expect((await put(store, [noteOf(owner, 'After.')])).faults).toEqual([]);
    const texts = (await list(store, { owner, kind: 'note' })).map(({ body }) => body.text);
    expect(texts).toEqual(['Before.', 'After.']);
    await store.close();
  });

  test('a backup is refused, and no part of one is left', async () => {
    const owner = newId();
    const folder = temporaryMemoryFolder();
    await prepareFolder(folder);
    const store = await openOrThrow(folder);
    await put(
      store,
      Array.from({ length: 200 }, () => noteOf(owner, Array.from({ length: 400 }, newId).join(' '))),
    );
    const disk = smallDisk(1);
    expect((await backUp(store, join(disk, 'one.backup'))).faults).toMatchObject([{ code: 'disk-full' }]);
    expect(readdirSync(disk)).toEqual([]);
    await store.close();
  });

  test('a store that cannot be made is refused, and made when there is room', async () => {
    const folder = smallDisk(16);
    const { value, faults } = await openStore({ folder });
    expect(value).toBeUndefined();
    expect(faults).toMatchObject([{ code: 'disk-full', file: folder }]);
    execFileSync('mount', ['-o', 'remount,size=96m', folder]);
    await (await openOrThrow(folder)).close();
  });
});
