import type { Fault, ShotRow } from '@leeway/contract';
import { clubKey, readClub, swingKey, type Ball, type ClubInBag, type SwingBalls } from '@leeway/engine';
import { approachBalls } from './approachBalls.ts';
import { ballOf } from './ballOf.ts';
import { agesOf, type Dated } from './dates.ts';
import type { Approach } from './readApproaches.ts';
import { onReferenceDay } from './referenceDay.ts';

/** The loft of a club whose name says nothing. */
const MID_IRON_DEG = 34;

/** Balls by club and swing on the reference day, each named as the bag spells it, else as it is spelled most often. Putts are left out, and told. */
export function groupShots(
  rows: readonly ShotRow[],
  bag: readonly ClubInBag[],
  approaches: { readonly rows: readonly Approach[]; readonly allLogged: boolean } = { rows: [], allLogged: false },
): { readonly swings: readonly SwingBalls[]; readonly faults: readonly Fault[] } {
  const groups = new Map<string, ShotRow[]>();
  const marks = Map.groupBy(approaches.rows, groupKeyOf);
  const putts: ShotRow[] = [];
  for (const row of rows) {
    if (readClub(row.club)?.family === 'putter') {
      putts.push(row);
      continue;
    }
    const key = groupKeyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  for (const key of marks.keys()) if (!groups.has(key)) groups.set(key, []);
  const all = [...rows, ...approaches.rows];
  const clubNames = namesBy(all, (r) => r.club, clubKey);
  const { agesDays, faults } = agesOf(all);
  const ages = new Map<Dated, number | undefined>(all.map((row, i) => [row, agesDays[i]]));
  const swings = [...groups].map(([key, group]) =>
    swingOf(group, marks.get(key) ?? [], approaches.allLogged, bag, clubNames, ages),
  );
  return { swings, faults: [...puttFaults(putts), ...unknownClubs(rows), ...faults] };
}

const groupKeyOf = ({ club, swing }: { readonly club: string; readonly swing: string }): string =>
  JSON.stringify([clubKey(club), swingKey(swing)]);

function swingOf(
  group: readonly ShotRow[],
  marks: readonly Approach[],
  allLogged: boolean,
  bag: readonly ClubInBag[],
  clubNames: ReadonlyMap<string, string>,
  agesDays: ReadonlyMap<Dated, number | undefined>,
): SwingBalls {
  const first = group[0] ?? marks[0];
  const key = clubKey(first?.club ?? '');
  const owned = bag.find((c) => clubKey(c.name) === key);
  const swing = swingKey(first?.swing ?? 'full');
  const listed = owned?.swings?.map((s) => (typeof s === 'string' ? s : s.name)).find((s) => swingKey(s) === swing);
  const loft = owned?.loftDeg === undefined ? {} : { loftDeg: owned.loftDeg };
  const loftDeg = owned?.loftDeg ?? readClub(first?.club ?? '')?.loftDeg ?? MID_IRON_DEG;
  const ageOf = (row: Dated): { readonly ageDays?: number } => {
    const ageDays = agesDays.get(row);
    return ageDays === undefined ? {} : { ageDays };
  };
  const ofShot = (row: ShotRow): Ball => ({
    ...ballOf(onReferenceDay(row, loftDeg)),
    ...ageOf(row),
    ...(isRangeBall(row) ? { rangeBall: true } : {}),
  });
  const played = approachBalls(
    marks,
    marks.map((m) => agesDays.get(m)),
    loftDeg,
    allLogged,
  );
  return {
    club: owned?.name ?? clubNames.get(key) ?? key,
    swing: listed ?? namesBy([...group, ...marks], (r) => r.swing, swingKey).get(swing) ?? swing,
    balls: [...group.map(ofShot), ...played.balls],
    ...(played.unseen.length === 0 ? {} : { unseen: played.unseen }),
    ...loft,
  };
}

/** Whether a row says that a ball of the range was hit. */
export const isRangeBall = ({ readings: { ball } }: ShotRow): boolean =>
  typeof ball === 'string' && /range/i.test(ball);

/** For each key the spelling met most often, the first of equals. */
function namesBy<Row>(
  rows: readonly Row[],
  nameOf: (row: Row) => string,
  keyOf: (name: string) => string,
): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(nameOf(row), (counts.get(nameOf(row)) ?? 0) + 1);
  const best = new Map<string, { readonly name: string; readonly count: number }>();
  for (const [name, count] of counts) {
    const key = keyOf(name);
    if (count > (best.get(key)?.count ?? 0)) best.set(key, { name, count });
  }
  return new Map([...best].map(([key, { name }]) => [key, name]));
}

function puttFaults(putts: readonly ShotRow[]): readonly Fault[] {
  const [first] = putts;
  if (first === undefined) return [];
  const found = putts.length === 1 ? 'a putt' : `${putts.length} putts`;
  return [
    {
      code: 'putts',
      level: 'left out',
      file: first.file,
      line: first.line,
      found,
      expected: 'clubs that carry',
      done: 'left out',
    },
  ];
}

/** One note for each club whose name says nothing: its balls count, but its prior is a mid-iron's. */
function unknownClubs(rows: readonly ShotRow[]): readonly Fault[] {
  const seen = new Set<string>();
  return rows.flatMap((row): readonly Fault[] => {
    const key = clubKey(row.club);
    if (seen.has(key)) return [];
    seen.add(key);
    if (readClub(row.club) !== undefined) return [];
    const expected = 'a name like driver, 3-wood, 4-hybrid, 7-iron, PW or 52';
    return [
      {
        code: 'unknown-club',
        level: 'note',
        file: row.file,
        line: row.line,
        found: `the club "${row.club}"`,
        expected,
        done: 'its prior is a 7-iron\u2019s',
      },
    ];
  });
}
