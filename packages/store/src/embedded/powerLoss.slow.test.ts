import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { put } from '../put.ts';
import { get } from '../read.ts';
import { erasePlayer } from '../erase.ts';
import { openStore } from '../store.ts';
import { prepareFolder } from '../testdata/preparedFolder.ts';
import { afterPowerLoss, markedBefore, record, type Recording } from '../testdata/powerLoss.ts';
import { newId, noteOf, profileOf } from '../testdata/records.ts';
import { newMemoryFolder, removeFolder, temporaryFolder } from '../testdata/temporary.ts';

/** How many moments of failure are tried: more by `LEEWAY_POWER_LOSSES`. */
const MOMENTS = Number(process.env['LEEWAY_POWER_LOSSES'] ?? 10);
const PLAYERS = 4;
const WRITES = 60;

/** A small generator with a seed (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const openOrThrow = async (folder: string) => {
  const { value, faults } = await openStore({ folder });
  if (value === undefined) throw new Error(JSON.stringify(faults));
  return value;
};

/** Writes to a store and records it: records of some players, checkpoints on the way, one player erased. Marks name what was acknowledged. */
async function recorded(folder: string): Promise<{ readonly recording: Recording; readonly before: string }> {
  const before = join(temporaryFolder(), 'before');
  await prepareFolder(folder);
  await (await openOrThrow(folder)).close();
  cpSync(folder, before, { recursive: true });
  const recording = record(folder);
  try {
    const store = await openOrThrow(folder);
    const owners = Array.from({ length: PLAYERS }, newId);
    for (let i = 0; i < WRITES; i++) {
      const owner = owners[i % PLAYERS] ?? '';
      const note = i < PLAYERS ? profileOf(owner) : noteOf(owner, `Note ${i}. ${'Long words. '.repeat(i * 4)}`);
      await put(store, [note]);
      recording.mark(`put ${owner} ${note.id}`);
      if (i % 20 === 19) await store.database.query('CHECKPOINT');
    }
    const gone = owners.pop() ?? '';
    recording.mark(`erasing ${gone}`);
    await erasePlayer(store, gone);
    recording.mark(`erased ${gone}`);
    await store.close();
  } finally {
    recording.stop();
  }
  return { recording, before };
}

/**
 * What was acknowledged and is not so after a failure. An erasure that was begun and not acknowledged may be done or not, but not half. A folder
 * that does not open has lost everything.
 */
async function lostAt(folder: string, acknowledged: readonly string[]): Promise<readonly string[]> {
  const store = await openOrThrow(folder).catch(() => undefined);
  if (store === undefined) return ['everything'];
  const ownersOf = (word: string): readonly string[] =>
    acknowledged.filter((what) => what.startsWith(`${word} `)).map((what) => what.split(' ')[1] ?? '');
  try {
    const erased = ownersOf('erased');
    const isHalfWay = (owner: string): boolean => ownersOf('erasing').includes(owner) && !erased.includes(owner);
    const wrong = erased.filter((owner) => store.keys.sealFor(owner) !== undefined).map((owner) => `key of ${owner}`);
    const states = new Map<string, Set<boolean>>();
    for (const [word, owner = '', id = ''] of acknowledged.map((what) => what.split(' '))) {
      if (word !== 'put') continue;
      const isThere = (await get(store, owner, id).catch(() => undefined)) !== undefined;
      states.set(owner, (states.get(owner) ?? new Set()).add(isThere));
      if (!isHalfWay(owner) && isThere === erased.includes(owner)) wrong.push(`${id} of ${owner}`);
    }
    const half = [...states].filter(([owner, found]) => isHalfWay(owner) && found.size > 1);
    const kept = [...states].filter(([owner, found]) => !found.has(true) && store.keys.sealFor(owner) !== undefined);
    return [...wrong, ...half.map(([owner]) => `half of ${owner}`), ...kept.map(([owner]) => `key of ${owner}`)];
  } finally {
    await store.close();
  }
}

async function lossesOf(before: string, recording: Pick<Recording, 'events' | 'files'>, seed: number, moments: number) {
  const random = seeded(seed);
  const losses: string[] = [];
  for (let i = 0; i < moments; i++) {
    const point = Math.floor(random() * (recording.events.length + 1));
    const folder = newMemoryFolder();
    try {
      afterPowerLoss(before, recording, point, random, folder);
      losses.push(
        ...(await lostAt(folder, markedBefore(recording.events, point))).map((what) => `at ${point}: ${what}`),
      );
    } finally {
      removeFolder(folder);
    }
  }
  return losses;
}

test(`nothing acknowledged is lost when the power goes, at ${MOMENTS} moments`, { timeout: 600_000 }, async () => {
  const { recording, before } = await recorded(temporaryFolder());
  expect(markedBefore(recording.events, Infinity)).toHaveLength(WRITES + 2);
  expect(await lossesOf(before, recording, 20260514, MOMENTS)).toEqual([]);
  // The same moments without the syncs: the test would have seen it.
  const unsynced = { ...recording, events: recording.events.filter(({ kind }) => kind !== 'sync') };
  expect(await lossesOf(before, unsynced, 20260514, Math.min(MOMENTS, 6))).not.toEqual([]);
});
