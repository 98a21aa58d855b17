import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openStore } from './store.ts';
import { prepareFolder } from './testdata/preparedFolder.ts';
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
