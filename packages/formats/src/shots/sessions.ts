import type { Fault, ShotRow } from '@leeway/contract';

/** Fewer equal rows than this may be chance. */
const LEAST_ROWS = 5;

/**
 * Leaves out sessions that are there twice: two files, or two dates of one file, with the very same shots in the same order. Counting a ball twice
 * would make it look better known than it is. Each is told once.
 */
export function withoutRepeatedSessions(rows: readonly ShotRow[]): {
  readonly rows: readonly ShotRow[];
  readonly faults: readonly Fault[];
} {
  const sessions = new Map<string, ShotRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.file, row.player, row.date]);
    const session = sessions.get(key);
    if (session === undefined) sessions.set(key, [row]);
    else session.push(row);
  }
  const groups = mergeSmall([...sessions.values()]);
  const seen = new Map<string, ShotRow>();
  const faults: Fault[] = [];
  const kept = groups.flatMap((session) => {
    const [first] = session;
    if (first === undefined || session.length < LEAST_ROWS) return session;
    const print = JSON.stringify(
      session.map((r) => [r.player, r.club, r.swing, r.carryM, r.sideM, r.readings['ball speed'], r.readings.spin]),
    );
    const before = seen.get(print);
    if (before === undefined) {
      seen.set(print, first);
      return session;
    }
    faults.push({
      code: 'session-twice',
      level: 'left out',
      file: first.file,
      line: first.line,
      found: `the same ${session.length} shots as from line ${before.line} of ${before.file}`,
      expected: 'each session once',
      done: 'these are left out',
    });
    return [];
  });
  return { rows: kept, faults };
}

/** Dates that are times give every row a date of its own: then a file is one session. */
function mergeSmall(sessions: readonly ShotRow[][]): readonly (readonly ShotRow[])[] {
  const byFile = new Map<string, ShotRow[][]>();
  for (const session of sessions) {
    const file = session[0]?.file ?? '';
    const list = byFile.get(file);
    if (list === undefined) byFile.set(file, [session]);
    else list.push(session);
  }
  return [...byFile.values()].flatMap((list) => (list.every((s) => s.length >= LEAST_ROWS) ? list : [list.flat()]));
}
