import type { Fault, ShotRow } from '@leeway/contract';
import { clubKey, swingKey, YARD_M } from '@leeway/engine';

/** Fewer shots than this may agree by chance. */
const LEAST_ROWS = 10;
/** Carries and sides this near are one shot written to another rounding. */
const SAME_M = 0.6;
/** This share of the smaller session's shots found in the other, in order, is no chance. */
const SAME_SHARE = 0.8;
const LEAST_CLUBS = 3;
/** Good strikes of one club spread about this much: for how sure a ratio of medians is. */
const SPREAD = 0.08;

/**
 * Notes on sessions (a file, or a date of a file) beside each other: one that repeats another all but for roundings or a few shots, and one that goes so much
 * further or shorter in all clubs as yards do beside metres. Nothing is changed; the user decides.
 */
export function oddSessions(rows: readonly ShotRow[]): readonly Fault[] {
  const sessions = [
    ...Map.groupBy(rows, (r) => JSON.stringify([r.file, r.player, r.date?.slice(0, 10)])).values(),
  ].filter((s) => s.length >= LEAST_ROWS);
  const faults: Fault[] = [];
  sessions.forEach((late, i) => {
    const before = sessions.slice(0, i).find((early) => repeats(early, late));
    if (before !== undefined)
      faults.push(
        note(
          'session-nearly-twice',
          late,
          `${late.length} shots that are nearly all those from line ${before[0]!.line} of ${before[0]!.file}`,
          'each session once',
        ),
      );
    else if (i > 0) faults.push(...unitNote(late, sessions.slice(0, i).flat()));
  });
  return faults;
}

function note(code: string, [first]: readonly ShotRow[], found: string, expected: string): Fault {
  return {
    code,
    level: 'note',
    file: first!.file,
    line: first!.line,
    found,
    expected,
    done: 'kept; leave the file out if it is so',
  };
}

const nameOf = (r: ShotRow): string => JSON.stringify([clubKey(r.club), swingKey(r.swing)]);

/** Whether most shots of the smaller stand in the larger in the same order. */
function repeats(a: readonly ShotRow[], b: readonly ShotRow[]): boolean {
  const [small, large] = a.length <= b.length ? [a, b] : [b, a];
  let [found, from] = [0, 0];
  for (const row of small) {
    const at = large.findIndex((r, i) => i >= from && i < from + LEAST_ROWS && isSame(row, r));
    if (at < 0) continue;
    found++;
    from = at + 1;
  }
  return found >= SAME_SHARE * small.length;
}

const isSame = (a: ShotRow, b: ShotRow): boolean =>
  nameOf(a) === nameOf(b) &&
  Math.abs(a.carryM - b.carryM) <= SAME_M &&
  (a.sideM === undefined || b.sideM === undefined || Math.abs(a.sideM - b.sideM) <= SAME_M);

function unitNote(late: readonly ShotRow[], others: readonly ShotRow[]): readonly Fault[] {
  const here = Map.groupBy(late, nameOf);
  const there = Map.groupBy(others, nameOf);
  let [sum, weights, clubs] = [0, 0, 0];
  for (const [name, own] of here) {
    const known = there.get(name);
    if (known === undefined) continue;
    const weight = 1 / (1 / own.length + 1 / known.length);
    sum += weight * Math.log(upperMiddle(own) / upperMiddle(known));
    weights += weight;
    clubs++;
  }
  if (clubs < LEAST_CLUBS) return [];
  const ratio = sum / weights;
  const se = (1.4 * SPREAD) / Math.sqrt(weights);
  const yard = -Math.log(YARD_M);
  // As near to a yard's ratio as chance has it, and far from none.
  if (Math.abs(ratio) < 3 * se || Math.abs(Math.abs(ratio) - yard) > 2 * se) return [];
  const times = Math.exp(ratio).toFixed(2);
  return [
    note(
      'session-units',
      late,
      `${clubs} clubs that carry ${times} times as far as in the sessions before`,
      'one unit in all sessions (a yard is .91 m), or balls that fly as far',
    ),
  ];
}

/** Mishits are short: of all balls the good strike stands about here. */
function upperMiddle(rows: readonly ShotRow[]): number {
  const sorted = rows.map((r) => Math.max(1, r.carryM)).toSorted((a, b) => a - b);
  return sorted[Math.floor(0.6 * sorted.length)]!;
}
