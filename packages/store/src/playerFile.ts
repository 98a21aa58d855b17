import { type Fault, idSchema, type Read, readRecord, type RecordInput } from '@leeway/contract';
import * as z from 'zod';
import { canonicalJson } from './canonical.ts';
import { put, type Receipt } from './put.ts';
import { COLUMNS, type Row, sealedOf } from './rows.ts';
import type { Store } from './store.ts';

/** One player's whole record as a file: everything ever stored, superseded records too, each as it was handed in. It is not sealed: it is the player's. */
const playerRecordSchema = z.strictObject({
  format: z.literal('leeway player record'),
  version: z.literal(1),
  owner: idSchema,
  records: z.array(z.unknown()),
});

/** A player's whole record as the text of a file, a record a line; undefined when nothing of the player is stored. The same records give the same bytes. */
export async function exportPlayer(store: Store, owner: string): Promise<string | undefined> {
  const rows = await store.database.query<Row>(
    `SELECT ${COLUMNS} FROM leeway.record AS r WHERE r.owner = $1 ORDER BY r.seq`,
    [owner],
  );
  const seal = store.keys.sealFor(owner);
  if (rows.length === 0 || seal === undefined) return undefined;
  const records = rows.map((row) => canonicalJson(seal.open(sealedOf(row))));
  return `{"format":"leeway player record","version":1,"owner":"${owner}","records":[\n${records.join(',\n')}\n]}\n`;
}

/**
 * Takes in a file that `exportPlayer` wrote, all or nothing; what is there already is not stored again. Refused: another file, records of another
 * player, and whatever `put` refuses, an erased player above all.
 */
export async function importPlayer(store: Store, text: string, file: string): Promise<Read<readonly Receipt[]>> {
  const parsed = playerRecordSchema.safeParse(jsonOf(text));
  if (!parsed.success) return { faults: [refused(file, 'no player record', 'a file of one player’s record')] };
  const { owner, records } = parsed.data;
  const reads = records.map((record, i) => readRecord(record, `${file}: records[${i}]`));
  const faults = reads.flatMap((read) => read.faults);
  if (faults.length > 0) return { faults };
  const strange = reads.find(({ value }) => value?.owner !== owner);
  if (strange !== undefined) return { faults: [refused(file, 'a record of another owner', `records of ${owner}`)] };
  return put(
    store,
    reads.map(({ value }) => value as RecordInput),
  );
}

const refused = (file: string, found: string, expected: string): Fault => ({
  code: 'player-record',
  level: 'refused',
  file,
  found,
  expected,
});

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
