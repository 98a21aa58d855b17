import type { Fault, ShotColumn, ShotReading, ShotReadings, ShotRow } from '@leeway/contract';
import { rankCorrelation, YARD_M } from '@leeway/engine';
import type { Layout } from './layout.ts';
import { isRangeBall } from './groupShots.ts';
import { tellsTheDay } from './referenceDay.ts';

/** What golf balls do: outside it a reading is told, and kept, since missed and topped shots are real. In SI and degrees. */
const LIMITS: readonly (readonly [ShotColumn, number, number, string])[] = [
  ['ball speed', 20 * 0.44704, 230 * 0.44704, '20 to 230 mph'],
  ['launch', -5, 60, '-5 to 60 degrees'],
  ['spin', 0, 15_000, '0 to 15,000 rpm'],
  ['apex', 0, 250 * 0.3048, '0 to 250 ft'],
  ['descent', 0, 85, '0 to 85 degrees'],
];
const MOST_CARRY_M = 400 * YARD_M;

/** Notes on one row: readings outside what golf balls do, and a side beyond the carry, whose direction cannot be told. */
export function notesOnRow(
  readings: ShotReadings,
  carryM: number,
  sideM: number | undefined,
  file: string,
  line: number,
): readonly Fault[] {
  const note = (found: string, expected: string, done: string): Fault => ({
    code: 'unusual',
    level: 'note',
    file,
    line,
    found,
    expected,
    done,
  });
  const notes: Fault[] = [];
  if (carryM > MOST_CARRY_M) notes.push(note(`a carry of ${carryM.toFixed(0)} m`, 'at most 400 yd', 'kept'));
  if (sideM !== undefined && Math.abs(sideM) > carryM)
    notes.push(
      note(
        `a side of ${sideM.toFixed(1)} m on a carry of ${carryM.toFixed(1)} m`,
        'a side within the carry',
        'kept without a direction',
      ),
    );
  for (const [column, least, most, words] of LIMITS) {
    const x = readings[column];
    if (typeof x === 'number' && (x < least || x > most))
      notes.push(note(`${column} ${Number(x.toFixed(2))}`, words, 'kept'));
  }
  return notes;
}

/** Notes on a whole file: units taken for granted, a day that is not corrected for, range balls, sides missing. */
export function notesOnFile(
  rows: readonly ShotRow[],
  layout: Layout,
  reading: ShotReading,
  file: string,
): readonly Fault[] {
  const note = (code: string, found: string, expected: string, done: string): Fault => ({
    code,
    level: 'note',
    file,
    found,
    expected,
    done,
  });
  const notes: Fault[] = [];
  const carry: ShotColumn = layout.at.has('carry') ? 'carry' : 'down the line';
  if (!layout.units.has(carry))
    notes.push(
      note(
        'units',
        `${carry} without a unit`,
        'yd or m in the heading, or --units',
        `taken in ${reading.units === 'm' ? 'metres' : 'yards'}`,
      ),
    );
  const moved = rows.filter(tellsTheDay).length;
  if (moved > 0)
    notes.push(
      note(
        'moved-to-reference-day',
        `${moved} shots with air, wind or slope`,
        'carries on the reference day',
        'carries are moved there by the flight model',
      ),
    );
  const windOnly = rows.filter(
    ({ readings: r }) => r['wind speed'] !== undefined && (r['wind from'] === undefined || r.bearing === undefined),
  ).length;
  if (windOnly > 0)
    notes.push(
      note(
        'wind-without-bearing',
        `${windOnly} shots with a wind, without where it came from or where they went`,
        'wind from and bearing, degrees',
        'their carries are not corrected for the wind',
      ),
    );
  const range = rows.filter(isRangeBall).length;
  if (range > 0)
    notes.push(
      note(
        'range-balls',
        `${range} range balls`,
        'the balls that are played',
        'their carries are joined with those of own balls by a factor that both teach, 1 give or take 5 % without',
      ),
    );
  if (!layout.at.has('side'))
    notes.push(
      note(
        'no-side',
        'no column "side"',
        'how far left or right each ball pitched',
        'direction is taken from the prior',
      ),
    );
  notes.push(...signNote(rows, file));
  return notes;
}

/** Fewer balls than this say nothing of a sign. */
const LEAST_PAIRS = 10;

/** Balls that start right mostly finish right: where they mostly do not, one of the two columns may have its sign the other way. */
function signNote(rows: readonly ShotRow[], file: string): readonly Fault[] {
  const pairs = rows.flatMap(({ sideM, readings: { direction } }) =>
    sideM !== undefined && typeof direction === 'number' ? [[sideM, direction] as const] : [],
  );
  if (pairs.length < LEAST_PAIRS) return [];
  const r = rankCorrelation(pairs);
  if (!(r < -0.3)) return [];
  const found = `side and direction that disagree (rank correlation ${r.toFixed(2)})`;
  return [
    {
      code: 'signs',
      level: 'note',
      file,
      found,
      expected: 'both with right as plus',
      done: 'kept; check the sign of the side',
    },
  ];
}
