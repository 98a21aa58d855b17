import { type Fault, type Kind, KINDS, type Read, readRecord, type RecordInput } from '@leeway/contract';
import { lockChanges } from './changeLock.ts';
import { refusedWhenFull } from './diskFull.ts';
import { recordFault } from './recordFault.ts';
import type { SealedRecord } from './seal.ts';
import type { Sql } from './sql.ts';
import type { Store } from './store.ts';

/** What became of a record that was handed in. */
export interface Receipt {
  readonly owner: string;
  readonly id: string;
  /** `already`: the same record was there. */
  readonly outcome: 'stored' | 'already';
  readonly seq: number;
}

/** Bytes written for a byte of record: the table, its index, the journal and a page's image in it. */
const WRITTEN_PER_BYTE = 4;

/**
 * Stores records, all or none. When it returns they are on stable storage. A record that is there already with the same content is not stored again
 * and not refused. Refused, each with its id: what `readRecord` refuses, other content under an id that is taken, a record of an erased owner,
 * a record that supersedes one that is not there, of another kind, or frozen; a disk without room.
 */
export async function put(store: Store, inputs: readonly unknown[]): Promise<Read<readonly Receipt[]>> {
  const reads = inputs.map((input, i) => readRecord(input, `record ${i + 1}`));
  const faults = reads.flatMap((read) => read.faults);
  if (faults.length > 0) return { faults };
  const records = reads.flatMap((read) => (read.value === undefined ? [] : [read.value]));
  if (records.length === 0) return { value: [], faults: [] };
  return refusedWhenFull(store.database.place, () =>
    store.database.transaction((sql) => putInside(store, sql, records)),
  );
}

async function putInside(store: Store, sql: Sql, records: readonly RecordInput[]): Promise<Read<readonly Receipt[]>> {
  await lockChanges(sql);
  const erased = await erasedOf(sql, records);
  if (erased.size > 0) return { faults: records.filter(({ owner }) => erased.has(owner)).map(erasedFault) };
  const known = await knownTo(sql, records);
  const faults: Fault[] = [];
  const fresh: SealedRecord[] = [];
  for (const record of records) {
    const closed = store.keys.sealMade(record.owner).close(record);
    const there = known.get(keyOf(record.owner, record.id));
    if (there !== undefined && there.digest !== base64(closed.digest)) faults.push(takenFault(record));
    if (there !== undefined) continue;
    faults.push(...supersedingFaults(record, known));
    fresh.push(closed);
    known.set(keyOf(record.owner, record.id), { ...record, digest: base64(closed.digest) });
  }
  if (faults.length > 0) return { faults };
  store.database.assertRoom(WRITTEN_PER_BYTE * fresh.reduce((sum, { sealed }) => sum + sealed.length, 0));
  const stored = await insert(sql, fresh);
  const receipts = records.map(({ owner, id }): Receipt => {
    const seq = stored.get(keyOf(owner, id));
    if (seq !== undefined) return { owner, id, outcome: 'stored', seq };
    return { owner, id, outcome: 'already', seq: known.get(keyOf(owner, id))?.seq ?? 0 };
  });
  return { value: receipts, faults: [] };
}

interface Known {
  readonly owner: string;
  readonly id: string;
  readonly kind: Kind;
  readonly digest: string;
  readonly seq?: number;
}

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

const keyOf = (owner: string, id: string): string => `${owner} ${id}`;

async function erasedOf(sql: Sql, records: readonly RecordInput[]): Promise<ReadonlySet<string>> {
  const owners = JSON.stringify([...new Set(records.map(({ owner }) => owner))]);
  const rows = await sql.query<{ owner: string }>(
    'SELECT owner FROM leeway.tombstone WHERE owner IN (SELECT o::uuid FROM json_array_elements_text($1::text::json) AS o)',
    [owners],
  );
  return new Set(rows.map(({ owner }) => owner));
}

/** The records that are there already of those handed in and those they supersede. */
async function knownTo(sql: Sql, records: readonly RecordInput[]): Promise<Map<string, Known>> {
  const asked = records.flatMap(({ owner, id, supersedes }) => [
    { owner, id },
    ...(supersedes === undefined ? [] : [{ owner, id: supersedes }]),
  ]);
  const rows = await sql.query<Known>(
    `SELECT r.owner, r.id, r.kind, encode(r.digest, 'base64') AS digest, r.seq::float8 AS seq
     FROM json_to_recordset($1::text::json) AS asked (owner uuid, id uuid) JOIN leeway.record AS r USING (owner, id)`,
    [JSON.stringify(asked)],
  );
  return new Map(rows.map((row) => [keyOf(row.owner, row.id), row]));
}

/** Writes new rows, numbered in the order given, and returns the numbers. */
async function insert(sql: Sql, records: readonly SealedRecord[]): Promise<ReadonlyMap<string, number>> {
  if (records.length === 0) return new Map();
  const lines = records.map((record, place) => ({
    ...record,
    place,
    digest: base64(record.digest),
    sealed: base64(record.sealed),
  }));
  const rows = await sql.query<{ owner: string; id: string; seq: number }>(
    `INSERT INTO leeway.record (owner, id, kind, version, supersedes, digest, sealed)
     SELECT owner, id, kind, version, supersedes, decode(digest, 'base64'), decode(sealed, 'base64')
     FROM json_to_recordset($1::text::json) AS line (
       place int, owner uuid, id uuid, kind text, version int, supersedes uuid, digest text, sealed text)
     ORDER BY place
     RETURNING owner, id, seq::float8 AS seq`,
    [JSON.stringify(lines)],
  );
  return new Map(rows.map(({ owner, id, seq }) => [keyOf(owner, id), seq]));
}

const erasedFault = (record: RecordInput): Fault =>
  recordFault('erased', record, 'a record of an erased player', 'a player who was not erased');

const takenFault = (record: RecordInput): Fault =>
  recordFault('taken', record, 'other content than is stored under this id', 'the same content, or a new id');

function supersedingFaults(record: RecordInput, known: ReadonlyMap<string, Known>): readonly Fault[] {
  if (record.supersedes === undefined) return [];
  const superseded = known.get(keyOf(record.owner, record.supersedes));
  if (superseded === undefined)
    return [recordFault('not-there', record, `a record that supersedes ${record.supersedes}`, 'one that is stored')];
  const { frozen } = KINDS[superseded.kind];
  if (frozen === true || (frozen === 'until withdrawn' && record.kind !== 'withdrawal'))
    return [recordFault('frozen', record, `a record that supersedes a ${superseded.kind}`, 'a new record')];
  if (record.kind !== 'withdrawal' && record.kind !== superseded.kind)
    return [
      recordFault('other-kind', record, `a ${record.kind} that supersedes a ${superseded.kind}`, 'the same kind'),
    ];
  return [];
}
