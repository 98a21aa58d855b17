import type { Fault, Read, ShotReadings } from '@leeway/contract';
import { decodeText } from './decode.ts';
import { dimensionOf, plainHeading, readHeading } from './headings.ts';
import { isMissing, readNumber, readSide, voteDecimalMark, type DecimalMark } from './numbers.ts';
import { readTable, type TableRow } from './records.ts';
import { defaultUnit, type Unit } from './units.ts';

/** An approach to a flag: where its pitch mark was, or which way it missed the green. Metres from the ball, along the line to the flag and right of it. */
export interface Approach {
  readonly file: string;
  readonly line: number;
  readonly club: string;
  readonly swing: string;
  readonly toFlagM: number;
  readonly mark?: { readonly pastM: number; readonly rightM: number };
  readonly missed?: Miss;
  readonly green?: { readonly frontM: number; readonly backM: number; readonly widthM: number };
  readonly date?: string;
  /** Columns that tell the day, as in files of shots. */
  readonly readings: ShotReadings;
}

export type Miss = 'short' | 'long' | 'left' | 'right' | 'sand' | 'away';

const COLUMNS = {
  'to flag': ['to flag', 'flag', 'distance to flag', 'to the flag'],
  past: ['past', 'past flag', 'long', 'beyond flag', 'past the flag'],
  right: ['right', 'right of flag', 'right of the flag', 'side'],
  front: ['front', 'green front', 'to front', 'front of green'],
  back: ['back', 'green back', 'to back', 'back of green'],
  width: ['width', 'green width', 'width of green'],
  missed: ['missed', 'miss', 'no mark'],
} as const;
type Column = keyof typeof COLUMNS;

const MISSES: { readonly [word: string]: Miss } = {
  short: 'short',
  s: 'short',
  long: 'long',
  left: 'left',
  l: 'left',
  right: 'right',
  r: 'right',
  sand: 'sand',
  bunker: 'sand',
  yes: 'away',
  away: 'away',
};
const MISS_WORDS = 'short, long, left, right, sand or yes';
const MOST_M = 350;

interface Place {
  readonly at: number;
  readonly unit?: Unit;
}

interface Headings {
  readonly own: ReadonlyMap<Column, Place>;
  readonly shared: ReadonlyMap<keyof ShotReadings, Place>;
}

/**
 * Reads approaches from CSV or TSV text with a heading row: `club`, `to flag`, and for each either `past` and `right` of the flag (short and left are negative) or `missed`;
 * `front`, `back` and `width` of the green where they are known, and the columns of a shot that tell its day. Rows that cannot be read are left out and told.
 */
export function readApproaches(bytes: Uint8Array | string, file: string, units: 'yd' | 'm'): Read<readonly Approach[]> {
  const text =
    typeof bytes === 'string' ? { value: bytes.replace(/^\uFEFF/, ''), faults: [] } : decodeText(bytes, file);
  if (text.value === undefined) return { faults: text.faults };
  const table = readTable(text.value, file);
  const faults: Fault[] = [...text.faults, ...table.faults];
  const [head, ...rows] = table.value?.rows ?? [];
  const headings = headingsOf(head);
  if (!headings.own.has('to flag') || !headings.shared.has('club')) {
    const found = `the headings ${head?.cells.join(', ') ?? '(none)'}`;
    const expected = 'columns "club" and "to flag", and "past" or "missed"';
    return {
      faults: [...faults, { code: 'approach-columns', level: 'refused', file, line: head?.line ?? 1, found, expected }],
    };
  }
  const mark = voteDecimalMark(rows.flatMap((r) => r.cells));
  const approaches = rows.flatMap((row): readonly Approach[] => {
    const read = approachOf(row, headings, { file, units, mark });
    if ('found' in read) {
      faults.push({ code: 'approach', level: 'left out', file, line: row.line, ...read, done: 'the row is left out' });
      return [];
    }
    return [read];
  });
  if (approaches.length === 0)
    faults.push({
      code: 'no-approaches',
      level: 'refused',
      file,
      found: 'no row that is an approach',
      expected: 'an approach a row',
    });
  return approaches.length === 0 ? { faults } : { value: approaches, faults };
}

function headingsOf(head: TableRow | undefined): Headings {
  const own = new Map<Column, Place>();
  const shared = new Map<keyof ShotReadings, Place>();
  (head?.cells ?? []).forEach((cell, at) => {
    const { meaning, unit } = readHeading(cell, undefined);
    const place = { at, ...(unit === undefined ? {} : { unit }) };
    const plain = plainHeading(cell);
    const column = (Object.keys(COLUMNS) as Column[]).find((c) => COLUMNS[c].some((w) => w === plain));
    if (column !== undefined) own.set(column, place);
    else if (meaning.kind === 'column') shared.set(meaning.column, place);
  });
  return { own, shared };
}

interface Refused {
  readonly found: string;
  readonly expected: string;
}

function approachOf(
  { cells, line }: TableRow,
  { own, shared }: Headings,
  { file, units, mark }: { readonly file: string; readonly units: 'yd' | 'm'; readonly mark: DecimalMark },
): Approach | Refused {
  const cellOf = (place: Place | undefined): string => cells[place?.at ?? -1] ?? '';
  const lengthOf = (column: Column): number | undefined => {
    const place = own.get(column);
    const cell = cellOf(place);
    const read = column === 'right' ? readSide(cell, mark) : readNumber(cell, mark);
    return isMissing(cell) || read === undefined
      ? undefined
      : (read.unit ?? place?.unit ?? defaultUnit('length', units, false)).toSi(read.value);
  };
  const club = cellOf(shared.get('club'));
  if (isMissing(club)) return { found: 'no club', expected: 'a club in each row' };
  const toFlagM = lengthOf('to flag');
  if (toFlagM === undefined || !(toFlagM > 5 && toFlagM < MOST_M))
    return { found: `"${cellOf(own.get('to flag'))}" to the flag`, expected: `more than 5 and less than ${MOST_M} m` };
  const [pastM, rightM = 0] = [lengthOf('past'), lengthOf('right')];
  const word = cellOf(own.get('missed')).trim().toLowerCase();
  const missed = MISSES[word];
  if (!isMissing(word) && word !== 'no' && missed === undefined)
    return { found: `missed "${word}"`, expected: MISS_WORDS };
  if ((pastM === undefined) === (missed === undefined))
    return {
      found: pastM === undefined ? 'neither a mark nor a miss' : 'a mark and a miss',
      expected: `past and right of the flag, or missed: ${MISS_WORDS}`,
    };
  if (pastM !== undefined && Math.hypot(pastM, rightM) > toFlagM / 2)
    return { found: `a mark ${Math.hypot(pastM, rightM).toFixed(0)} m from the flag`, expected: 'a mark on its green' };
  const [frontM, backM, widthM] = [lengthOf('front'), lengthOf('back'), lengthOf('width')];
  const green =
    frontM !== undefined && backM !== undefined && backM > frontM
      ? { frontM, backM, widthM: widthM ?? backM - frontM }
      : undefined;
  const date = cellOf(shared.get('date'));
  const swing = cellOf(shared.get('swing'));
  return {
    file,
    line,
    club,
    swing: isMissing(swing) ? 'full' : swing,
    toFlagM,
    ...(missed === undefined ? { mark: { pastM: pastM ?? 0, rightM } } : { missed }),
    ...(green === undefined ? {} : { green }),
    ...(isMissing(date) ? {} : { date }),
    readings: dayOf(cells, shared, units, mark),
  };
}

function dayOf(
  cells: readonly string[],
  shared: Headings['shared'],
  units: 'yd' | 'm',
  mark: DecimalMark,
): ShotReadings {
  const found: { -readonly [column in keyof ShotReadings]: ShotReadings[column] } = {};
  for (const column of ['temperature', 'altitude', 'wind speed', 'wind from', 'bearing', 'slope'] as const) {
    const place = shared.get(column);
    const read = readNumber(cells[place?.at ?? -1] ?? '', mark);
    const dimension = dimensionOf(column);
    if (place === undefined || read === undefined || dimension === undefined) continue;
    const height = column === 'altitude' || column === 'slope';
    found[column] = (read.unit ?? place.unit ?? defaultUnit(dimension, units, height)).toSi(read.value);
  }
  return found;
}
