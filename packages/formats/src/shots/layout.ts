import type { Fault, ShotColumn, ShotReading } from '@leeway/contract';
import { readHeading, type Heading } from './headings.ts';
import type { TableRow } from './records.ts';
import { readUnit, type Unit } from './units.ts';

/** Where each column stands and what unit it is in. */
export interface Layout {
  readonly headings: readonly Heading[];
  /** Cell index by column. */
  readonly at: ReadonlyMap<ShotColumn, number>;
  readonly units: ReadonlyMap<ShotColumn, Unit>;
}

/** A heading row is looked for in this many rows. */
const ROWS_SEARCHED = 40;

export interface FoundLayout {
  readonly layout: Layout;
  /** Index of the first row after the heading (and the units row, if there is one). */
  readonly next: number;
}

/** Finds the heading row: of the first 40 rows, the one with most known columns, at least two of them or all that it has. */
export function findLayout(rows: readonly TableRow[], reading: ShotReading): FoundLayout | undefined {
  let best: { readonly index: number; readonly layout: Layout } | undefined;
  for (let index = 0; index < Math.min(ROWS_SEARCHED, rows.length); index++) {
    const layout = layoutOf(rows[index]?.cells ?? [], reading);
    if (layout.at.size > (best?.layout.at.size ?? 1)) best = { index, layout };
  }
  if (best === undefined) return undefined;
  const below = rows[best.index + 1]?.cells ?? [];
  if (!isUnitsRow(below)) return { layout: best.layout, next: best.index + 1 };
  return { layout: withUnits(best.layout, below), next: best.index + 2 };
}

function layoutOf(cells: readonly string[], reading: ShotReading): Layout {
  const headings = cells.map((cell) => readHeading(cell, reading.map));
  const at = new Map<ShotColumn, number>();
  const units = new Map<ShotColumn, Unit>();
  headings.forEach((h, i) => {
    if (h.meaning.kind !== 'column' || at.has(h.meaning.column)) return;
    at.set(h.meaning.column, i);
    if (h.unit !== undefined) units.set(h.meaning.column, h.unit);
  });
  return { headings, at, units };
}

/** A row of units: two cells at least, and every one that is not empty names a unit. */
function isUnitsRow(cells: readonly string[]): boolean {
  const words = cells.filter((c) => c !== '' && c !== '-');
  return words.length > 0 && words.every((w) => readUnit(w) !== undefined);
}

function withUnits(layout: Layout, cells: readonly string[]): Layout {
  const units = new Map(layout.units);
  for (const [column, i] of layout.at) {
    const unit = readUnit(cells[i] ?? '');
    if (unit !== undefined) units.set(column, unit);
  }
  return { ...layout, units };
}

/** A heading row repeated among the shots: most of its columns, and no figures. Its own layout wins from there on. */
export function repeatedLayout(cells: readonly string[], layout: Layout, reading: ShotReading): Layout | undefined {
  if (cells.some((c) => /^[\d.,+\-\s]+$/.test(c) && /\d/.test(c))) return undefined;
  const again = layoutOf(cells, reading);
  if (again.at.size < 2 || again.at.size < 0.6 * layout.at.size) return undefined;
  const units = new Map(again.units);
  for (const [column, unit] of layout.units) if (!units.has(column)) units.set(column, unit);
  return { ...again, units };
}

export const isUnitsOnly = isUnitsRow;

/** What to say about the headings: unknown ones with the way to map them, a column given twice, and columns that are not used. */
export function headingFaults(layout: Layout, line: number, file: string): readonly Fault[] {
  const faults: Fault[] = [];
  const unused: string[] = [];
  layout.headings.forEach((h, i) => {
    const place = { file, line, column: i + 1 };
    if (h.meaning.kind === 'unknown')
      faults.push({
        ...place,
        code: 'unknown-heading',
        level: 'note',
        found: `the heading "${h.text}"`,
        expected: 'a known column',
        done: `the column is not read; say what it is with --map "${h.text}=COLUMN"`,
      });
    else if (h.meaning.kind === 'unused' && h.text !== '') unused.push(h.text);
    else if (h.meaning.kind === 'column' && layout.at.get(h.meaning.column) !== i)
      faults.push({
        ...place,
        code: 'column-twice',
        level: 'note',
        found: `the heading "${h.text}", a second "${h.meaning.column}"`,
        expected: 'each column once',
        done: 'the first one is read',
      });
  });
  if (unused.length > 0)
    faults.push({
      code: 'unused-columns',
      level: 'note',
      file,
      line,
      found: unused.join(', '),
      expected: 'columns of use here',
      done: 'not read',
    });
  return faults;
}
