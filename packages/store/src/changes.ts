import { COLUMNS, type Kept, openRows, type Row } from './rows.ts';
import type { Store } from './store.ts';

/** What happened after a number, for a phone that keeps a copy. */
export interface Changes {
  /** Records stored, in order. */
  readonly records: readonly Kept[];
  /** Owners erased: their copies are to be destroyed. */
  readonly erased: readonly string[];
  /** The number to ask after next. */
  readonly upTo: number;
  /** Whether there is more after it. */
  readonly more: boolean;
}

/**
 * What happened to some owners' records after a number, at most so many changes. Erasures among them are told whoever they are of, because the phone
 * may hold what it no longer asks for. Numbers count in one store: a phone starts at 0 again when the store's id is another.
 */
export async function changesAfter(
  store: Store,
  after: number,
  owners: readonly string[],
  most = 1000,
): Promise<Changes> {
  const rows = await store.database.query<Row & { readonly gone: boolean }>(
    `SELECT ${COLUMNS}, false AS gone FROM leeway.record AS r
     WHERE r.seq > $1 AND r.owner IN (SELECT o::uuid FROM json_array_elements_text($2::text::json) AS o)
     UNION ALL
     SELECT t.owner, t.owner, t.seq::float8, '', 0, NULL, NULL, true FROM leeway.tombstone AS t WHERE t.seq > $1
     ORDER BY seq LIMIT $3`,
    [after, JSON.stringify(owners), most + 1],
  );
  const told = rows.slice(0, most);
  return {
    records: await openRows(
      store,
      told.filter(({ gone }) => !gone),
    ),
    erased: told.filter(({ gone }) => gone).map(({ owner }) => owner),
    upTo: told.at(-1)?.seq ?? after,
    more: rows.length > most,
  };
}
