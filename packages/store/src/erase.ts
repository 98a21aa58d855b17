import { type Fault, HOUSE, type Read } from '@leeway/contract';
import { lockChanges } from './changeLock.ts';
import { refusedWhenFull } from './diskFull.ts';
import { eraseJobs } from './jobs.ts';
import { renewKeyCopies } from './keyCopies.ts';
import type { Store } from './store.ts';

/** What an erasure removed. */
export interface Erasure {
  readonly records: number;
  readonly jobs: number;
  /** Files with copies of the keys that could not be written anew: the erased key still stands in them. */
  readonly unreached: readonly string[];
}

/**
 * Erases a player: every record, superseded ones too, and every queued job; then the key, so that what is left of the rows in the database's
 * files, its journal and all backups is noise. A tombstone refuses their records for good and tells phones to destroy their copies. Broken off at any
 * point it has either not begun, or is finished at the next start. Erasing again is harmless.
 * Refused: the house, a disk without room.
 */
export async function erasePlayer(store: Store, owner: string): Promise<Read<Erasure>> {
  if (owner === HOUSE) return { faults: [houseFault] };
  return refusedWhenFull(store.database.place, async () => {
    const removed = await store.database.transaction(async (sql) => {
      await lockChanges(sql);
      await sql.query('INSERT INTO leeway.tombstone (owner) VALUES ($1) ON CONFLICT DO NOTHING', [owner]);
      const records = await sql.query('DELETE FROM leeway.record WHERE owner = $1 RETURNING id', [owner]);
      await sql.query('DELETE FROM leeway.progress WHERE owner = $1', [owner]);
      return { records: records.length, jobs: await eraseJobs(sql, owner) };
    });
    store.keys.destroy(owner);
    return { value: { ...removed, unreached: await renewKeyCopies(store) }, faults: [] };
  });
}

const houseFault: Fault = {
  code: 'house',
  level: 'refused',
  file: 'erase',
  found: 'the house',
  expected: 'a player',
};
