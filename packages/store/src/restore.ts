import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { createInterface } from 'node:readline/promises';
import * as z from 'zod';
import { type Fault, idSchema, type Read } from '@leeway/contract';
import { BACKUP_FORMAT, BACKUP_VERSION, type BackupLine } from './backup.ts';
import { lockChanges } from './changeLock.ts';
import { refusedWhenFull } from './diskFull.ts';
import { type KeyCopy, readKeyCopy } from './keyCopies.ts';
import type { Sql } from './sql.ts';
import type { Store } from './store.ts';

export interface Restored {
  readonly records: number;
  /** Records of players who were erased after the backup was made: they stay erased. */
  readonly leftOut: number;
}

const headingSchema = z.strictObject({
  format: z.literal(BACKUP_FORMAT),
  version: z.literal(BACKUP_VERSION),
  store: idSchema,
});
const lineSchema = z.strictObject({
  seq: z.int().min(1),
  owner: idSchema,
  id: idSchema,
  kind: z.string(),
  version: z.int().min(1),
  supersedes: idSchema.nullable(),
  digest: z.string(),
  sealed: z.string(),
});
const endSchema = z.strictObject({ records: z.int().min(0), sha256: z.hex() });

const PAGE = 2000;

/**
 * Restores a backup into an empty store, with the copy of the keys that stands beside the backups now. All or nothing. Refused: a store that
 * holds something, a file that is not a whole backup, a record whose owner has no key and was not erased, a disk without room.
 */
export async function restore(store: Store, path: string, keyPath: string): Promise<Read<Restored>> {
  const copy = readKeyCopy(keyPath);
  if (copy.value === undefined) return { faults: copy.faults };
  const keys = copy.value;
  try {
    return await refusedWhenFull(store.database.place, async () => {
      const value = await store.database.transaction(async (sql) => {
        await lockChanges(sql);
        await assertEmpty(sql, store);
        const restored = await takeIn(sql, path, keys);
        for (const [owner, key] of keys.keys) store.keys.add(owner, key);
        return restored;
      });
      return { value, faults: [] };
    });
  } catch (error) {
    if (error instanceof Refused) return { faults: [error.fault] };
    throw error;
  }
}

/** Ends the transaction of a restore that is refused. */
class Refused extends Error {
  readonly fault: Fault;
  constructor(file: string, found: string, expected: string) {
    super(found);
    this.fault = { code: 'backup', level: 'refused', file, found, expected };
  }
}

async function assertEmpty(sql: Sql, { database }: Store): Promise<void> {
  const rows = await sql.query('SELECT 1 AS one FROM leeway.record UNION ALL SELECT 1 FROM leeway.tombstone LIMIT 1');
  if (rows.length > 0) throw new Refused(database.place, 'a store that holds records', 'an empty store');
}

async function takeIn(sql: Sql, path: string, { keys, erased }: KeyCopy): Promise<Restored> {
  let [records, leftOut, page] = [0, 0, [] as BackupLine[]];
  for await (const line of linesOf(path)) {
    if (erased.has(line.owner)) {
      leftOut++;
      continue;
    }
    if (!keys.has(line.owner))
      throw new Refused(path, `records of ${line.owner}, whose key is not among the keys`, 'the keys of this backup');
    records++;
    page.push(line);
    if (page.length < PAGE) continue;
    await insert(sql, page);
    page = [];
  }
  await insert(sql, page);
  await sql.query(`SELECT setval('leeway.change', coalesce((SELECT max(seq) FROM leeway.record), 1))`);
  for (const owner of erased) await sql.query('INSERT INTO leeway.tombstone (owner) VALUES ($1)', [owner]);
  return { records, leftOut };
}

const insert = (sql: Sql, page: readonly BackupLine[]): Promise<unknown> =>
  sql.query(
    `INSERT INTO leeway.record (seq, owner, id, kind, version, supersedes, digest, sealed)
     SELECT seq, owner, id, kind, version, supersedes, decode(digest, 'base64'), decode(sealed, 'base64')
     FROM json_to_recordset($1::text::json) AS line (
       seq bigint, owner uuid, id uuid, kind text, version int, supersedes uuid, digest text, sealed text)`,
    [JSON.stringify(page)],
  );

/** The records of a backup. Throws a refusal at the end when the file was cut short or changed. */
async function* linesOf(path: string): AsyncGenerator<BackupLine> {
  if (!fs.existsSync(path)) throw new Refused(path, 'no file', 'a backup');
  const hash = createHash('sha256');
  const notWhole = new Refused(path, 'a file that is no whole backup', 'a backup as it was written');
  let count = -1;
  let ended = false;
  for await (const text of createInterface({ input: fs.createReadStream(path, 'utf8'), crlfDelay: Infinity })) {
    const value = jsonOf(text);
    const end = endSchema.safeParse(value);
    if (ended) throw notWhole;
    if (end.success) {
      if (end.data.records !== count || end.data.sha256 !== hash.digest('hex')) throw notWhole;
      ended = true;
      continue;
    }
    hash.update(`${text}\n`);
    const line = (count < 0 ? headingSchema : lineSchema).safeParse(value);
    if (!line.success) throw notWhole;
    if (++count > 0) yield line.data as BackupLine;
  }
  if (!ended) throw notWhole;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
