import type { Fault, ShotColumn, ShotReading, ShotReadings, ShotRow } from '@leeway/contract';
import { clubKey } from '@leeway/engine';
import { dimensionOf, isHeight } from './headings.ts';
import { isUnitsOnly, type Layout, repeatedLayout } from './layout.ts';
import { type DecimalMark, isMissing, readNumber, readSide } from './numbers.ts';
import type { TableRow } from './records.ts';
import { notesOnRow } from './sanity.ts';
import { BlockSums, hasSummaryWord } from './summaryRows.ts';
import { defaultUnit } from './units.ts';

/** Takes rows one after another; what a row means depends on those before it (its block's club, sums and headings). */
export class ShotReader {
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
