import type { Fault, ShotRow } from '@leeway/contract';
import { clubKey, RAD_PER_DEG, readClub, swingKey, type Ball, type ClubInBag, type SwingBalls } from '@leeway/engine';
import { agesOf } from './dates.ts';
import { type OnReferenceDay, onReferenceDay } from './referenceDay.ts';

/** The loft of a club whose name says nothing. */
const MID_IRON_DEG = 34;

/** Balls by club and swing on the reference day, each named as the bag spells it, else as it is spelled most often. Putts are left out, and told. */
export function groupShots(
  rows: readonly ShotRow[],
  bag: readonly ClubInBag[],
): { readonly swings: readonly SwingBalls[]; readonly faults: readonly Fault[] } {
  const groups = new Map<string, ShotRow[]>();
  const putts: ShotRow[] = [];
  for (const row of rows) {
    if (readClub(row.club)?.family === 'putter') {
      putts.push(row);
      continue;
    }
    const key = JSON.stringify([clubKey(row.club), swingKey(row.swing)]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  const clubNames = namesBy(rows, (r) => r.club, clubKey);
  const { agesDays, faults } = agesOf(rows);
  const ages = new Map(rows.map((row, i) => [row, agesDays[i]]));
  const swings = [...groups.values()].map((group) => swingOf(group, bag, clubNames, ages));
  return { swings, faults: [...puttFaults(putts), ...unknownClubs(rows), ...faults] };
}

function swingOf(
  group: readonly ShotRow[],
  bag: readonly ClubInBag[],
  clubNames: ReadonlyMap<string, string>,
  agesDays: ReadonlyMap<ShotRow, number | undefined>,
): SwingBalls {
  const key = clubKey(group[0]?.club ?? '');
  const owned = bag.find((c) => clubKey(c.name) === key);
  const swing = swingKey(group[0]?.swing ?? 'full');
  const listed = owned?.swings?.map((s) => (typeof s === 'string' ? s : s.name)).find((s) => swingKey(s) === swing);
  const loft = owned?.loftDeg === undefined ? {} : { loftDeg: owned.loftDeg };
  return {
    club: owned?.name ?? clubNames.get(key) ?? key,
    swing: listed ?? namesBy(group, (r) => r.swing, swingKey).get(swing) ?? swing,
    balls: group.map((row): Ball => {
      const ageDays = agesDays.get(row);
      return {
        ...ballOf(onReferenceDay(row, owned?.loftDeg ?? readClub(row.club)?.loftDeg ?? MID_IRON_DEG)),
        ...(ageDays === undefined ? {} : { ageDays }),
        ...(isRangeBall(row) ? { rangeBall: true } : {}),
      };
    }),
    ...loft,
  };
}

/** Whether a row says that a ball of the range was hit. */
export const isRangeBall = ({ readings: { ball } }: ShotRow): boolean =>
  typeof ball === 'string' && /range/i.test(ball);

/** A ball's direction is known when its side was, and lies within its carry: sin(direction) = side / carry. */
export function ballOf({ carryM, sideM, seCarryM, seDirectionDeg }: OnReferenceDay): Ball {
  const erred = seCarryM === undefined ? {} : { seCarryM };
  if (sideM === undefined || Math.abs(sideM) > carryM || carryM === 0) return { carryM, ...erred };
  const turned = seDirectionDeg === undefined ? {} : { seDirectionDeg };
  return { carryM, directionDeg: Math.asin(sideM / carryM) / RAD_PER_DEG, ...erred, ...turned };
}

/** For each key the spelling met most often, the first of equals. */
function namesBy(
  rows: readonly ShotRow[],
  nameOf: (row: ShotRow) => string,
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
