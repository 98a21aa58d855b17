import { type Kind, KIND_NAMES, type StoredRecord } from '@leeway/contract';
import { COLUMNS, type Kept, openRows, type Row } from './rows.ts';
import { NOT_SUPERSEDED } from './read.ts';
import type { Store } from './store.ts';

/** The newest record of a kind that a player has. */
export interface Latest {
  readonly kind: Kind;
  readonly seq: number;
  /** When it was taken in, by this machine's clock. */
  readonly at: string;
}

export interface ListedPlayer {
  readonly profile: Kept<StoredRecord<'profile'>>;
  /** A kind once, the newest first. */
  readonly latest: readonly Latest[];
}

/** A part of the index says what is newest of a kind, so the number of shots does not matter. */
const LATEST = `
  (SELECT json_agg(json_build_object('kind', newest.kind, 'seq', newest.seq, 'at', newest.received) ORDER BY newest.seq DESC)::text
   FROM json_array_elements_text($1::text::json) AS k (kind), LATERAL (
     SELECT n.kind, n.seq, n.received FROM leeway.record AS n
     WHERE n.owner = r.owner AND n.kind = k.kind ORDER BY n.seq DESC LIMIT 1) AS newest)`;

/** All players with what is newest of theirs, in the order in which they came. Of two profiles that both stand, the later is shown. */
export async function playerList(store: Store): Promise<readonly ListedPlayer[]> {
  const rows = await store.database.query<Row & { readonly latest: string }>(
    `SELECT ${COLUMNS}, ${LATEST} AS latest FROM leeway.record AS r
     WHERE r.kind = 'profile' AND ${NOT_SUPERSEDED} ORDER BY r.seq`,
    [JSON.stringify(KIND_NAMES)],
  );
  const latest = new Map(rows.map(({ owner, latest: text }) => [owner, JSON.parse(text) as readonly Latest[]]));
  const profiles = (await openRows(store, rows)) as readonly Kept<StoredRecord<'profile'>>[];
  const byOwner = new Map(profiles.map((profile) => [profile.owner, profile]));
  return [...byOwner.values()].map((profile) => ({ profile, latest: latest.get(profile.owner) ?? [] }));
}
