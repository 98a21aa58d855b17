import { newestForm, type StoredRecord } from '@leeway/contract';
import type { Header } from './seal.ts';
import type { Store } from './store.ts';

/** A row of the table of records, as it is read. */
export interface Row extends Header {
  readonly seq: number;
  /** Base64. */
  readonly sealed: string;
}

/** A record with its place in the order of everything that was stored. */
export type Kept<R extends StoredRecord = StoredRecord> = R & { readonly seq: number };

/**
 * A bigint comes back as a text from one database and as a number from the other; as a double it is a number from both, exact to 2^53. To be ordered by `r.seq`: the bare name is the
 * double, which no index helps. Bytes come as
 * base64 because the embedded engine's own reading of them takes ten times as long.
 */
export const COLUMNS =
  "r.owner, r.id, r.seq::float8 AS seq, r.kind, r.version, r.supersedes, encode(r.sealed, 'base64') AS sealed";

/** A row as its seal opens it. */
export const sealedOf = ({ sealed, ...row }: Row) => ({ ...row, sealed: Buffer.from(sealed, 'base64') });

/**
 * Records of rows, each in its newest form. Rows of an owner that was erased since they were read are left out. Throws when an owner's key is
 * not where it should be.
 */
export async function openRows(store: Store, rows: readonly Row[]): Promise<readonly Kept[]> {
  const opened: Kept[] = [];
  for (const row of rows) {
    const seal = store.keys.sealFor(row.owner);
    if (seal !== undefined) opened.push({ ...newestForm(seal.open(sealedOf(row))), seq: row.seq });
    else if (!(await isErased(store, row.owner)))
      throw new Error(`The key of owner ${row.owner} is missing: restore it from a copy of the keys.`);
  }
  return opened;
}

async function isErased({ database }: Store, owner: string): Promise<boolean> {
  const rows = await database.query('SELECT 1 AS one FROM leeway.tombstone WHERE owner = $1', [owner]);
  return rows.length > 0;
}
