import type { Fault, Read, ShotColumn, ShotReading, ShotRow } from '@leeway/contract';
import { decodeText } from './decode.ts';
import { dimensionOf, type Heading, readHeading } from './headings.ts';
import { findLayout, type FoundLayout, headingFaults, type Layout } from './layout.ts';
import { type DecimalMark, voteDecimalMark } from './numbers.ts';
import { CAP, readTable, type TableRow } from './records.ts';
import { notesOnFile } from './sanity.ts';
import { ShotReader } from './shotReader.ts';

/**
 * Reads the shots of a CSV or TSV file. Good rows are kept; every row that is left out and every cell that cannot be read is a fault with its line
 * and cell (counted from 1). Refused: files over the caps, bytes that are not text, no heading row, no `club`, neither `carry` nor
 * flight columns.
 */
export function readShots(bytes: Uint8Array | string, file: string, reading: ShotReading): Read<readonly ShotRow[]> {
  const laid = layOut(bytes, file, reading);
  if (laid.value === undefined) return { faults: laid.faults };
  const { rows, layout, next } = laid.value;
  const headingLine = rows[next - 1]?.line ?? 1;
  const missing = missingColumns(layout, file, headingLine);
  if (missing !== undefined)
    return { faults: [...laid.faults, ...headingFaults(layout, missing.line ?? 1, file), missing] };
  const shots = new ShotReader(file, reading, layout, voteOn(rows, next, layout));
  for (const row of rows.slice(next)) shots.take(row);
  const faults = [...laid.faults, ...headingFaults(layout, headingLine, file), ...shots.faults];
  if (shots.rows.length === 0)
    return {
      faults: [
        ...faults,
        { code: 'no-shots', level: 'refused', file, found: 'no row that is a shot', expected: 'a shot a row' },
      ],
    };
  return { value: shots.rows, faults: [...faults, ...notesOnFile(shots.rows, layout, reading, file)] };
}

/** A table with its headings found. */
interface LaidOut extends FoundLayout {
  readonly rows: readonly TableRow[];
}

function layOut(bytes: Uint8Array | string, file: string, reading: ShotReading): Read<LaidOut> {
  const table = tableOf(bytes, file);
  if (table.value === undefined) return { faults: table.faults };
  const rows = table.value;
  const found = findLayout(rows, reading);
  if (found === undefined) return { faults: [...table.faults, noHeadings(rows, file)] };
  return { value: { ...found, rows }, faults: table.faults };
}

function tableOf(bytes: Uint8Array | string, file: string): Read<readonly TableRow[]> {
  const size = bytes.length;
  if (size > CAP.bytes)
    return refuse('too-large', file, `${Math.round(size / 1e6)} MB`, `at most ${CAP.bytes / 1e6} MB`);
  const text: Read<string> =
    typeof bytes === 'string' ? { value: bytes.replace(/^\uFEFF/, ''), faults: [] } : decodeText(bytes, file);
  if (text.value === undefined) return { faults: text.faults };
  if (text.value.trim() === '') return refuse('empty', file, 'nothing in it', 'a heading row and shots');
  const table = readTable(text.value, file);
  const faults = [...text.faults, ...table.faults];
  return table.value === undefined ? { faults } : { value: table.value.rows, faults };
}

/** The headings of a file of shots, and its rows as they stand. */
export interface ShotTable {
  readonly headings: readonly (Heading & {
    /** The file itself says the unit, in the heading or below it. */
    readonly unitGiven: boolean;
  })[];
  /** Cells by the 1-based line that their row ends on. */
  readonly cells: ReadonlyMap<number, readonly string[]>;
}

/**
 * What the headings of a file were taken for, to be looked at: also where columns that are needed are missing, and where none is known (then the
 * widest of the first rows is taken for them). Refused: what is no table.
 */
export function shotTable(bytes: Uint8Array | string, file: string, reading: ShotReading): Read<ShotTable> {
  const { value: rows, faults } = tableOf(bytes, file);
  if (rows === undefined) return { faults };
  const layout = findLayout(rows, reading)?.layout;
  const found = layout?.headings ?? widestOf(rows)?.cells.map((cell) => readHeading(cell, reading.map)) ?? [];
  const headings = found.map((heading) => {
    const { meaning, unit } = heading;
    const below = meaning.kind === 'column' && layout?.units.has(meaning.column) === true;
    return { ...heading, unitGiven: unit !== undefined || below };
  });
  return { value: { headings, cells: new Map(rows.map(({ line, cells }) => [line, cells])) }, faults };
}

function refuse(
  code: string,
  file: string,
  found: string,
  expected: string,
  before: readonly Fault[] = [],
): { readonly faults: readonly Fault[] } {
  return { faults: [...before, { code, level: 'refused', file, found, expected }] };
}

/** The row that looks most like headings: the widest of the first ones. */
const widestOf = (rows: readonly TableRow[]): TableRow | undefined =>
  rows
    .slice(0, 40)
    .reduce<TableRow | undefined>(
      (best, row) => (row.cells.length > (best?.cells.length ?? 0) ? row : best),
      undefined,
    );

function noHeadings(rows: readonly TableRow[], file: string): Fault {
  const widest = widestOf(rows);
  const found = `no headings that are known; the widest row is ${widest?.cells.slice(0, 5).join(' | ') ?? ''}`;
  const place = widest === undefined ? {} : { line: widest.line };
  return {
    code: 'no-headings',
    level: 'refused',
    file,
    ...place,
    found,
    expected: 'club and carry, or --map "HEADING=club"',
  };
}

function missingColumns(layout: Layout, file: string, line: number): Fault | undefined {
  const has = (column: ShotColumn): boolean => layout.at.has(column);
  const headings = layout.headings.map((h) => h.text).join(', ');
  const fault = (code: string, expected: string): Fault => ({
    code,
    level: 'refused',
    file,
    line,
    found: `the headings ${headings}`,
    expected,
  });
  if (!has('club')) return fault('no-club-column', 'a column "club" (or --map "HEADING=club")');
  if (has('carry') || has('down the line')) return undefined;
  if (has('ball speed') && has('launch') && has('spin'))
    return fault(
      'carry-from-flight',
      'a column "carry"; carries are not worked out from ball speed, launch and spin yet',
    );
  return fault('no-carry-column', 'a column "carry" (or --map "HEADING=carry")');
}

/** The decimal mark, by the vote of all cells in columns of measures. */
function voteOn(rows: readonly TableRow[], from: number, layout: Layout): DecimalMark {
  const measured = [...layout.at].filter(([column]) => dimensionOf(column) !== undefined).map(([, i]) => i);
  return voteDecimalMark(rows.slice(from).flatMap((row) => measured.map((i) => row.cells[i] ?? '')));
}
