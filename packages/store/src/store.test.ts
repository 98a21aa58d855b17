import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openEmbedded } from './embedded/embedded.ts';
import { openKeyRing } from './keyRing.ts';
import { migrate, MIGRATIONS } from './migrate.ts';
import { put } from './put.ts';
import { get } from './read.ts';
import { openStore } from './store.ts';
import { prepareFolder } from './testdata/preparedFolder.ts';
import { newId, profileOf } from './testdata/records.ts';
import { storeContract } from './testdata/storeContract.ts';
import { newMemoryFolder, removeFolder } from './testdata/temporary.ts';

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) removeFolder(folder);
});

storeContract('the embedded database', async () => {
  const folder = newMemoryFolder();
  folders.push(folder);
  await prepareFolder(folder);
  const { value, faults } = await openStore({ folder });
  if (value === undefined) throw new Error(JSON.stringify(faults));
  return value;
});

test('a place that is no folder is refused in a line', async () => {
  const folder = newMemoryFolder();
  folders.push(folder);
  writeFileSync(join(folder, 'file'), '');
  const { value, faults } = await openStore({ folder: join(folder, 'file') });
  expect(value).toBeUndefined();
  expect(faults).toMatchObject([{ code: 'folder', file: join(folder, 'file') }]);
});

test.each(MIGRATIONS.slice(0, -1))(
  'a store that $name was the last step of is opened with all it holds',
  async (last) => {
    const folder = newMemoryFolder();
    folders.push(folder);
    await prepareFolder(folder);
    const { value: database } = await openEmbedded(folder);
    if (database === undefined) throw new Error('no database');
    expect(await migrate(database, MIGRATIONS.slice(0, last.number))).toEqual([]);
    const [id, owner] = [newId(), newId()];
    await database.query('INSERT INTO leeway.store (id) VALUES ($1)', [id]);
    const old = { id, database, keys: openKeyRing(join(folder, 'keys', id)), close: () => database.close() };
    const profile = profileOf(owner);
    expect((await put(old, [profile])).faults).toEqual([]);
    await old.close();
    const { value: store } = await openStore({ folder });
    if (store === undefined) throw new Error('no store');
    expect(store.id).toBe(id);
    expect(await get(store, owner, profile.id)).toMatchObject({ body: { name: 'Tilda Brook' } });
    const steps = await store.database.query<{ number: number }>(
      'SELECT number FROM public.leeway_migration ORDER BY 1',
    );
    expect(steps.map(({ number }) => number)).toEqual(MIGRATIONS.map(({ number }) => number));
    await store.close();
  },
);
