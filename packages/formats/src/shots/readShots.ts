import type { Fault, Read, ShotColumn, ShotReading, ShotReadings, ShotRow } from '@leeway/contract';
import { clubKey } from '@leeway/engine';
import { decodeText } from './decode.ts';
import { dimensionOf, isHeight } from './headings.ts';
import { findLayout, headingFaults, isUnitsOnly, repeatedLayout, type Layout } from './layout.ts';
import { isMissing, readNumber, readSide, voteDecimalMark, type DecimalMark } from './numbers.ts';
import { CAP, readTable, type TableRow } from './records.ts';
import { notesOnFile, notesOnRow } from './sanity.ts';
import { BlockSums, hasSummaryWord } from './summaryRows.ts';
import { defaultUnit } from './units.ts';

/**
 * Reads the shots of a CSV or TSV file. Good rows are kept; every row that is left out and every cell that cannot be read is a fault with its line
 * and cell (counted from 1). Refused: files over the caps, bytes that are not text, no heading row, no `club`, neither `carry` nor
 * flight columns.
 */
export function readShots(bytes: Uint8Array | string, file: string, reading: ShotReading): Read<readonly ShotRow[]> {
  const size = bytes.length;
  if (size > CAP.bytes)
    return refuse('too-large', file, `${Math.round(size / 1e6)} MB`, `at most ${CAP.bytes / 1e6} MB`);
  const text: Read<string> =
    typeof bytes === 'string' ? { value: bytes.replace(/^\uFEFF/, ''), faults: [] } : decodeText(bytes, file);
  if (text.value === undefined) return { faults: text.faults };
  if (text.value.trim() === '') return refuse('empty', file, 'nothing in it', 'a heading row and shots');
  const table = readTable(text.value, file);
  if (table.value === undefined) return { faults: [...text.faults, ...table.faults] };
  const before = [...text.faults, ...table.faults];
  const { rows } = table.value;
  const found = findLayout(rows, reading);
  if (found === undefined) {
    const first = rows[0]?.cells.slice(0, 6).join(' | ') ?? '';
    return refuse(
      'no-headings',
      file,
      `no heading row; the first row is ${first}`,
      'a row with the headings club and carry (or say what they are called with --map "HEADING=club")',
      before,
    );
  }
  const { layout, next } = found;
  const missing = missingColumns(layout, file, rows[next - 1]?.line ?? 1);
  if (missing !== undefined) return { faults: [...before, ...headingFaults(layout, missing.line ?? 1, file), missing] };
  const shots = new ShotReader(file, reading, layout, voteOn(rows, next, layout));
  for (const row of rows.slice(next)) shots.take(row);
  const headingLine = rows[next - 1]?.line ?? 1;
  const faults = [...before, ...headingFaults(layout, headingLine, file), ...shots.faults];
  if (shots.rows.length === 0)
    return {
      faults: [
        ...faults,
        { code: 'no-shots', level: 'refused', file, found: 'no row that is a shot', expected: 'a shot a row' },
      ],
    };
  return { value: shots.rows, faults: [...faults, ...notesOnFile(shots.rows, layout, reading, file)] };
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

/** Takes rows one after another; what a row means depends on those before it (its block's club, sums and headings). */
class ShotReader {
  readonly rows: ShotRow[] = [];
  readonly faults: Fault[] = [];
  private club = '';
  private withoutClub = 0;
  private block = new BlockSums();
  private readonly whole = new BlockSums();
  private readonly file: string;
  private readonly reading: ShotReading;
  private layout: Layout;
  private readonly mark: DecimalMark;

  constructor(file: string, reading: ShotReading, layout: Layout, mark: DecimalMark) {
    this.file = file;
    this.reading = reading;
    this.layout = layout;
    this.mark = mark;
  }

  take(row: TableRow): void {
    const again = repeatedLayout(row.cells, this.layout, this.reading);
    if (again !== undefined) {
      this.layout = again;
      this.startBlock();
      return this.leftOut(row, 'heading-again', 'the headings again', 'a shot', 'read as headings');
    }
    if (isUnitsOnly(row.cells)) return this.leftOut(row, 'units-row', 'a row of units', 'a shot', 'left out');
    const extra = row.cells.slice(this.layout.headings.length).filter((c) => c !== '');
    if (extra.length > 0)
      return this.leftOut(
        row,
        'cells',
        `${row.cells.length} cells`,
        `${this.layout.headings.length} cells, as many as headings`,
      );
    const clubAt = this.layout.at.get('club') ?? 0;
    if (hasSummaryWord(row.cells, clubAt)) return this.summary(row, 'a row of averages or the like, by its words');
    const clubCell = row.cells[clubAt] ?? '';
    if (!isMissing(clubCell) && clubKey(clubCell) !== clubKey(this.club)) this.startBlock();
    if (!isMissing(clubCell)) this.club = clubCell;
    if (row.cells.every((c, i) => i === clubAt || isMissing(c))) return;
    this.takeShot(row);
  }

  private takeShot(row: TableRow): void {
    const readings = this.readings(row);
    const values = this.rawValues(row);
    const most = this.chanceOfSummary(row);
    if (this.block.isSummary(values, row.cells, most) || this.whole.isSummary(values, row.cells, most))
      return this.summary(row, 'a row that equals the mean or the deviation of those above it');
    const carry = readings.carry ?? readings['down the line'];
    const carryAt = (this.layout.at.get('carry') ?? this.layout.at.get('down the line') ?? 0) + 1;
    if (typeof carry !== 'number') return this.noCarry(row, readings, carryAt);
    if (this.club === '') return this.leftOut(row, 'no-club', 'no club', 'a club in this row or above it');
    if (this.club.length > LONGEST_NAME || (typeof readings.swing === 'string' && readings.swing.length > LONGEST_NAME))
      return this.leftOut(row, 'name', 'a club or swing with a very long name', `at most ${LONGEST_NAME} characters`);
    const side = typeof readings.side === 'number' ? readings.side : undefined;
    const carryM = readings.carry === undefined ? Math.hypot(carry, side ?? 0) : carry;
    if (carryM < 0 || carryM > MOST_CARRY_M)
      return this.leftOut(
        row,
        'carry-range',
        `a carry of ${row.cells[carryAt - 1] ?? ''}`,
        `0 to ${MOST_CARRY_M} m`,
        'the row is left out',
        carryAt,
      );
    if (carryM === 0 && this.layout.at.has('ball speed') && !readings['ball speed'])
      return this.leftOut(row, 'no-reading', 'carry 0 and no ball speed', 'a reading', 'the row is left out', carryAt);
    if (this.hasNoClub(row)) this.withoutClub++;
    this.block.add(values);
    this.whole.add(values);
    this.rows.push(this.shot(row, readings, carryM, side));
    this.faults.push(...notesOnRow(readings, carryM, side, this.file, row.line));
  }

  private hasNoClub(row: TableRow): boolean {
    return isMissing(row.cells[this.layout.at.get('club') ?? 0] ?? '');
  }

  /** A row without a club among rows that all have one is half-way to being a summary; elsewhere only figures that chance would not give are. */
  private chanceOfSummary(row: TableRow): number {
    return this.hasNoClub(row) && this.withoutClub === 0 ? 0.02 : 1e-5;
  }

  private noCarry(row: TableRow, readings: ShotReadings, column: number): void {
    const cell = row.cells[column - 1] ?? '';
    if (!isMissing(cell))
      return this.leftOut(row, 'carry', `carry "${cell}"`, this.numberWords(), 'the row is left out', column);
    const flight = readings['ball speed'] !== undefined && readings.launch !== undefined && readings.spin !== undefined;
    if (flight)
      return this.leftOut(
        row,
        'carry-from-flight',
        'no carry, but ball speed, launch and spin',
        'a carry; none is worked out from flight yet',
        'the row is left out',
        column,
      );
    this.leftOut(row, 'no-carry', 'no carry', 'a carry', 'the row is left out', column);
  }

  private shot(row: TableRow, readings: ShotReadings, carryM: number, sideM: number | undefined): ShotRow {
    const word = (column: ShotColumn): string | undefined => {
      const cell = row.cells[this.layout.at.get(column) ?? -1] ?? '';
      return isMissing(cell) ? undefined : cell;
    };
    const player = word('player');
    const date = word('date');
    return {
      file: this.file,
      line: row.line,
      club: this.club,
      swing: word('swing') ?? 'full',
      carryM,
      ...(sideM === undefined ? {} : { sideM }),
      ...(player === undefined ? {} : { player }),
      ...(date === undefined ? {} : { date }),
      readings,
    };
  }

  /** Every measured cell in SI, words as they stand; a cell that cannot be read is reported and left out of the row. */
  private readings(row: TableRow): ShotReadings {
    const readings: { [C in ShotColumn]?: number | string } = {};
    for (const [column, i] of this.layout.at) {
      const cell = row.cells[i] ?? '';
      if (column === 'club' || isMissing(cell)) continue;
      const dimension = dimensionOf(column);
      if (dimension === undefined) {
        readings[column] = cell;
        continue;
      }
      const reading = column === 'side' ? readSide(cell, this.mark) : readNumber(cell, this.mark);
      const fits = reading?.unit === undefined || reading.unit.dimension === dimension;
      if (reading === undefined || !fits) {
        if (column !== 'carry' && column !== 'down the line') this.unreadable(row, column, i, cell);
        continue;
      }
      const unit = reading.unit ?? this.unitOf(column);
      readings[column] = unit.toSi(reading.value);
    }
    return readings;
  }

  private unitOf(column: ShotColumn): { toSi: (x: number) => number } {
    const dimension = dimensionOf(column) ?? 'length';
    const own = this.layout.units.get(column);
    if (own?.dimension === dimension) return own;
    const shared =
      column === 'side' || column === 'total'
        ? (this.layout.units.get('carry') ?? this.layout.units.get('down the line'))
        : undefined;
    return shared?.dimension === dimension ? shared : defaultUnit(dimension, this.reading.units, isHeight(column));
  }

  /** The figures as written, by cell: what the test for averages compares. */
  private rawValues(row: TableRow): ReadonlyMap<number, number> {
    const values = new Map<number, number>();
    for (const [column, i] of this.layout.at) {
      if (dimensionOf(column) === undefined) continue;
      const cell = row.cells[i] ?? '';
      const reading = column === 'side' ? readSide(cell, this.mark) : readNumber(cell, this.mark);
      if (reading !== undefined) values.set(i, reading.value);
    }
    return values;
  }

  private unreadable(row: TableRow, column: ShotColumn, i: number, cell: string): void {
    const expected = column === 'side' ? `${this.numberWords()}, or a figure with L or R` : this.numberWords();
    this.faults.push({
      code: 'cell',
      level: 'left out',
      file: this.file,
      line: row.line,
      column: i + 1,
      found: `${column} "${cell}"`,
      expected,
      done: 'the cell is left out',
    });
  }

  private numberWords(): string {
    return `a number with a decimal ${this.mark === '.' ? 'point' : 'comma'}`;
  }

  private summary(row: TableRow, found: string): void {
    this.leftOut(row, 'summary-row', found, 'a shot', 'left out');
  }

  private leftOut(
    row: TableRow,
    code: string,
    found: string,
    expected: string,
    done = 'the row is left out',
    column?: number,
  ): void {
    const place = column === undefined ? { line: row.line } : { line: row.line, column };
    this.faults.push({
      code,
      level: EXPECTED_ROWS.has(code) ? 'note' : 'left out',
      file: this.file,
      ...place,
      found,
      expected,
      done,
    });
  }

  private startBlock(): void {
    this.block = new BlockSums();
  }
}

/** Rows that such files are known to hold besides shots: told, but nothing is lost with them. */
const EXPECTED_ROWS = new Set(['heading-again', 'units-row', 'summary-row']);

/** As in a Player file. */
const LONGEST_NAME = 80;

/** No ball carries further; a figure beyond this is in another unit or another column. */
const MOST_CARRY_M = 450;
