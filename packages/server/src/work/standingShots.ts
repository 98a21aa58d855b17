import type { StoredRecord } from '@leeway/contract';
import { current, type Kept, list, type Store } from '@leeway/store';

/** A player's sessions, shots and approaches that count. */
export interface Standing {
  /** Sessions by the ids that shots name them by: a corrected session stands under its old ids too. */
  readonly sessions: ReadonlyMap<string, StoredRecord<'session'>>;
  readonly shots: readonly Kept<StoredRecord<'shot'>>[];
  readonly approaches: readonly Kept<StoredRecord<'approach'>>[];
}

/** The shots that nothing corrects or takes back, without those of sessions that were taken back. A shot whose session has not come in yet counts. */
export async function standingShots(store: Store, owner: string): Promise<Standing> {
  const shots = await current(store, { owner, kind: 'shot' });
  const all = await list(store, { owner, kind: 'session' });
  const withdrawals = await list(store, { owner, kind: 'withdrawal' });
  const withdrawn = new Set(withdrawals.map(({ supersedes }) => supersedes));
  const next = new Map(
    all.flatMap((session) => (session.supersedes === undefined ? [] : [[session.supersedes, session] as const])),
  );
  const sessions = new Map<string, StoredRecord<'session'>>();
  const gone = new Set<string>();
  for (const session of all) {
    let last: StoredRecord<'session'> = session;
    for (let later = next.get(last.id); later !== undefined; later = next.get(last.id)) last = later;
    if (withdrawn.has(last.id)) gone.add(session.id);
    else sessions.set(session.id, last);
  }
  const approaches = await current(store, { owner, kind: 'approach' });
  return { sessions, shots: shots.filter(({ body }) => !gone.has(body.session)), approaches };
}

/** The sessions of shots that count, each as it stands. */
export const sessionsOf = ({ sessions, shots }: Pick<Standing, 'sessions' | 'shots'>): string[] => [
  ...new Set(shots.map(({ body }) => sessions.get(body.session)?.id ?? body.session)),
];
