import type { Kind, StoredRecord } from '@leeway/contract';
import { COLUMNS, type Kept, openRows, type Row } from './rows.ts';
import type { Store } from './store.ts';

/** Which records are asked for. */
export interface Asked<K extends Kind> {
  readonly owner: string;
  readonly kind: K;
  /** Only what was stored after this number. */
  readonly after?: number;
  /** At most so many, the first of them. */
  readonly most?: number;
}

export const NOT_SUPERSEDED =
  'NOT EXISTS (SELECT 1 FROM leeway.record AS later WHERE later.owner = r.owner AND later.supersedes = r.id)';
const NO_LIMIT = 2 ** 31 - 1;

/** One record, whether superseded or not. */
export async function get(store: Store, owner: string, id: string): Promise<Kept | undefined> {
  const rows = await store.database.query<Row>(
    `SELECT ${COLUMNS} FROM leeway.record AS r WHERE r.owner = $1 AND r.id = $2`,
    [owner, id],
  );
  const [record] = await openRows(store, rows);
  return record;
}

/** An owner's records of a kind, superseded ones too, in the order in which they were stored. */
export const list = <K extends Kind>(store: Store, asked: Asked<K>): Promise<readonly Kept<StoredRecord<K>>[]> =>
  ofKind(store, asked, '');

/** An owner's records of a kind that nothing supersedes, in the order in which they were stored. Two corrections of one record both stand. */
export const current = <K extends Kind>(store: Store, asked: Asked<K>): Promise<readonly Kept<StoredRecord<K>>[]> =>
  ofKind(store, asked, `AND ${NOT_SUPERSEDED}`);

/** The ids of an owner's current records of a kind with their numbers, unopened: for what a caller holds already. */
export const currentIds = ({ database }: Store, { owner, kind }: { readonly owner: string; readonly kind: Kind }) =>
  database.query<{ readonly id: string; readonly seq: number }>(
    `SELECT r.id, r.seq::float8 AS seq FROM leeway.record AS r
     WHERE r.owner = $1 AND r.kind = $2 AND ${NOT_SUPERSEDED} ORDER BY r.seq`,
    [owner, kind],
  );

/** Kinds of which a player has thousands, each small. */
const MANY: ReadonlySet<Kind> = new Set(['shot', 'stroke']);

async function ofKind<K extends Kind>(
  store: Store,
  { owner, kind, after = 0, most = NO_LIMIT }: Asked<K>,
  also: string,
): Promise<readonly Kept<StoredRecord<K>>[]> {
  const statement = `SELECT ${COLUMNS} FROM leeway.record AS r
     WHERE r.owner = $1 AND r.kind = $2 AND r.seq > $3 ${also} ORDER BY r.seq LIMIT $4`;
  const values = [owner, kind, after, most];
  const rows = MANY.has(kind)
    ? await atOnce(store, statement, values)
    : await store.database.query<Row>(statement, values);
  return (await openRows(store, rows)) as readonly Kept<StoredRecord<K>>[];
}

/** Rows as one JSON text: the embedded engine's driver takes twice as long over thousands of rows of their own. */
async function atOnce({ database }: Store, statement: string, values: readonly unknown[]): Promise<readonly Row[]> {
  const [all] = await database.query<{ readonly rows: string | null }>(
    `SELECT json_agg(json_build_array(r.owner, r.id, r.seq, r.kind, r.version, r.supersedes, r.sealed) ORDER BY r.seq)::text AS rows
     FROM (${statement}) AS r`,
    values,
  );
  const tuples = JSON.parse(all?.rows ?? '[]') as readonly [
    string,
    string,
    number,
    string,
    number,
    string | null,
    string,
  ][];
  return tuples.map(([owner, id, seq, kind, version, supersedes, sealed]) => ({
    owner,
    id,
    seq,
    kind,
    version,
    supersedes,
    sealed,
  }));
}

/** A record with all that it corrects and all that corrects it, in the order in which they were stored. */
export async function history(store: Store, owner: string, id: string): Promise<readonly Kept[]> {
  const rows = await store.database.query<Row>(
    `WITH RECURSIVE
       before (id) AS (
         SELECT $2::uuid
         UNION SELECT r.supersedes FROM leeway.record AS r JOIN before USING (id) WHERE r.owner = $1 AND r.supersedes IS NOT NULL),
       chain (id) AS (
         SELECT id FROM before
         UNION SELECT r.id FROM leeway.record AS r JOIN chain ON r.supersedes = chain.id WHERE r.owner = $1)
     SELECT ${COLUMNS} FROM leeway.record AS r JOIN chain USING (id) WHERE r.owner = $1 ORDER BY r.seq`,
    [owner, id],
  );
  return openRows(store, rows);
}

/** The current profiles of all players, in the order in which they were stored. */
export async function players(store: Store): Promise<readonly Kept<StoredRecord<'profile'>>[]> {
  const rows = await store.database.query<Row>(
    `SELECT ${COLUMNS} FROM leeway.record AS r WHERE r.kind = 'profile' AND ${NOT_SUPERSEDED} ORDER BY r.seq`,
  );
  return (await openRows(store, rows)) as readonly Kept<StoredRecord<'profile'>>[];
}
