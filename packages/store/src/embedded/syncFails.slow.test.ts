import fs from 'node:fs';
import { expect, onTestFinished, test, vi } from 'vitest';
import { put } from '../put.ts';
import { list } from '../read.ts';
import { openStore } from '../store.ts';
import { prepareFolder } from '../testdata/preparedFolder.ts';
import { newId, noteOf } from '../testdata/records.ts';
import { temporaryFolder } from '../testdata/temporary.ts';

test(
  'a disk that fails to sync is no acknowledgement; the next call opens anew and goes on',
  { timeout: 60_000 },
  async () => {
    const folder = temporaryFolder();
    await prepareFolder(folder);
    const { value: store } = await openStore({ folder });
    if (store === undefined) throw new Error('did not open');
    const owner = newId();
    const before = noteOf(owner, 'Before.');
    await put(store, [before]);
    const failing = vi.spyOn(fs, 'fsyncSync').mockImplementation(() => {
      throw Object.assign(new Error('EIO: i/o error, fsync'), { code: 'EIO' });
    });
    onTestFinished(() => failing.mockRestore());
    const unsure = noteOf(owner, 'Perhaps.');
    await expect(put(store, [unsure])).rejects.toThrow('EIO');
    failing.mockRestore();
    const after = noteOf(owner, 'After.');
    expect((await put(store, [unsure, after])).faults).toEqual([]);
    const ids = (await list(store, { owner, kind: 'note' })).map(({ id }) => id);
    expect(ids).toEqual([before.id, unsure.id, after.id]);
    await store.close();
  },
);
