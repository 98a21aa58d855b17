import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { list } from '../read.ts';
import { openStore } from '../store.ts';
import { prepareFolder } from '../testdata/preparedFolder.ts';
import { newId } from '../testdata/records.ts';
import { temporaryFolder, temporaryMemoryFolder } from '../testdata/temporary.ts';

/** How often the writer is killed: more by `LEEWAY_KILLS`. */
const KILLS = Number(process.env['LEEWAY_KILLS'] ?? 10);
const WRITER = fileURLToPath(new URL('../testdata/writer.ts', import.meta.url));

/** Starts a writer and kills it so long after it has opened, or after its start when that is earlier. Returns what it said. */
async function killedWriter(folder: string, owner: string, afterMs: number, from: 'opening' | 'start' = 'opening') {
  const writer = spawn(process.execPath, [WRITER, folder, owner], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  const killSoon = () => setTimeout(() => writer.kill('SIGKILL'), afterMs);
  if (from === 'start') killSoon();
  createInterface({ input: writer.stdout }).on('line', (line) => {
    lines.push(line);
    if (from === 'opening' && line.startsWith('opened')) killSoon();
  });
  await once(writer, 'close');
  return lines;
}

const wordsAfter = (lines: readonly string[], word: string): readonly string[] =>
  lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));

test(
  `a writer killed ${KILLS} times has lost nothing it acknowledged`,
  { timeout: 60_000 + KILLS * 15_000 },
  async () => {
    const folder = temporaryMemoryFolder();
    const owner = newId();
    await prepareFolder(folder);
    const kept = new Set<string>();
    for (let kill = 0; kill < KILLS; kill++) {
      const lines = await killedWriter(folder, owner, 20 + ((kill * 137) % 480));
      const found = Number(wordsAfter(lines, 'opened')[0]);
      expect(found).toBeGreaterThanOrEqual(kept.size);
      // One note may have been stored whose acknowledgement was still on its way.
      expect(found).toBeLessThanOrEqual(kept.size + kill);
      for (const id of wordsAfter(lines, 'kept')) kept.add(id);
    }
    expect(kept.size).toBeGreaterThan(KILLS);
    const { value: store } = await openStore({ folder });
    if (store === undefined) throw new Error('did not open');
    const there = new Set((await list(store, { owner, kind: 'note' })).map(({ id }) => id));
    await store.close();
    expect([...kept].filter((id) => !there.has(id))).toEqual([]);
  },
);

test.each([300, 1500])(
  'a first start killed after %d ms is no obstacle to the next',
  { timeout: 120_000 },
  async (afterMs) => {
    const folder = temporaryFolder();
    await killedWriter(folder, newId(), afterMs, 'start');
    const { value: store, faults } = await openStore({ folder });
    expect(faults).toEqual([]);
    await store?.close();
  },
);

test('a second process is refused in one line while the first writes', { timeout: 60_000 }, async () => {
  const folder = temporaryFolder();
  await prepareFolder(folder);
  const { value: store } = await openStore({ folder });
  const lines = await killedWriter(folder, newId(), 20_000, 'start');
  await store?.close();
  expect(lines).toEqual(['refused in-use']);
});

test('a lock file of the engine’s own that was cut short is no obstacle', { timeout: 60_000 }, async () => {
  const folder = temporaryFolder();
  await prepareFolder(folder);
  writeFileSync(join(folder, 'database', 'postmaster.pid'), '');
  const { value: store, faults } = await openStore({ folder });
  expect(faults).toEqual([]);
  await store?.close();
});
