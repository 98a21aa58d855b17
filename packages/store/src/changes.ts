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
    `SELECT ${COLUMNS}, r.kind IS NULL AS gone FROM (
       (SELECT seq, owner, id, kind, version, supersedes, sealed FROM leeway.record
        WHERE seq > $1 AND owner IN (SELECT o::uuid FROM json_array_elements_text($2::text::json) AS o)
        ORDER BY seq LIMIT $3)
       UNION ALL
       (SELECT seq, owner, owner, NULL, NULL, NULL, NULL FROM leeway.tombstone WHERE seq > $1 ORDER BY seq LIMIT $3)
     ) AS r ORDER BY r.seq LIMIT $3`,
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
