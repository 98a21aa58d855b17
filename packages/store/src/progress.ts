import type { Store } from './store.ts';

/** How far a job has come: so many steps of so many. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** Notes how far a job of an owner has come. Of an owner who is erased nothing is noted. */
export async function noteProgress({ database }: Store, job: string, owner: string, progress: Progress): Promise<void> {
  await database.query(
    `INSERT INTO leeway.progress (job, owner, done, total)
     SELECT $1, $2, $3::int, $4::int WHERE NOT EXISTS (SELECT 1 FROM leeway.tombstone WHERE owner = $2)
     ON CONFLICT (job) DO UPDATE SET done = excluded.done, total = excluded.total`,
    [job, owner, progress.done, progress.total],
  );
}

/** How far a job has come; undefined before its first step. */
export async function progressOf({ database }: Store, job: string): Promise<Progress | undefined> {
  const [row] = await database.query<Progress>('SELECT done, total FROM leeway.progress WHERE job = $1', [job]);
  return row;
}
