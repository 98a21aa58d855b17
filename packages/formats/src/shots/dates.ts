import type { Fault, ShotRow } from '@leeway/contract';

/** A row and the date that it may have. */
export type Dated = Pick<ShotRow, 'file' | 'line' | 'date' | 'readings'>;

const DAY_MS = 86_400_000;

/** Years, months and days in the orders that they are written in. */
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})/;
const LOCAL = /^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4})/;

/**
 * For each row, the days that it was hit before the newest of all rows; nothing where its date is missing or is no date. `12.5.2026` is the 12th of May; with slashes
 * or dashes a file's own dates must settle which of day and month comes first, else none of them counts and it is told.
 */
export function agesOf(rows: readonly Dated[]): {
  readonly agesDays: readonly (number | undefined)[];
  readonly faults: readonly Fault[];
} {
  const faults: Fault[] = [];
  const orders = new Map([...Map.groupBy(rows, (r) => r.file)].map(([file, own]) => [file, monthFirst(own)]));
  for (const [file, order] of orders) if (order === 'unsettled') faults.push(unsettled(file, rows));
  const days = rows.map((row) => {
    const date = writtenOf(row);
    return date === undefined ? undefined : dayOf(date, orders.get(row.file) ?? 'unsettled');
  });
  const newest = Math.max(...days.map((d) => d ?? -Infinity));
  return { agesDays: days.map((d) => (d === undefined ? undefined : newest - d)), faults };
}

function writtenOf({ date, readings }: Dated): string | undefined {
  const written = date ?? readings.date;
  return typeof written === 'string' ? written.trim() : undefined;
}

type Order = boolean | 'unsettled';

/** Whether the months come first in a file's dates with slashes or dashes; unsettled when all may be read both ways. */
function monthFirst(rows: readonly Dated[]): Order {
  let ambiguous = false;
  for (const row of rows) {
    const found = LOCAL.exec(writtenOf(row) ?? '');
    if (found === null || found[2] === '.') continue;
    if (Number(found[1]) > 12) return false;
    if (Number(found[3]) > 12) return true;
    if (found[1] !== found[3]) ambiguous = true;
  }
  return ambiguous ? 'unsettled' : false;
}

/** Days since 1970 of a date; nothing for what is none. */
function dayOf(written: string, order: Order): number | undefined {
  const iso = ISO.exec(written);
  if (iso !== null) return dayNumber(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const local = LOCAL.exec(written);
  if (local === null || (order === 'unsettled' && local[2] !== '.')) return undefined;
  const [first, second, year] = [Number(local[1]), Number(local[3]), Number(local[4])];
  return order === true && local[2] !== '.' ? dayNumber(year, first, second) : dayNumber(year, second, first);
}

function dayNumber(year: number, month: number, day: number): number | undefined {
  const ms = Date.UTC(year, month - 1, day);
  const back = new Date(ms);
  return back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? Math.round(ms / DAY_MS) : undefined;
}

function unsettled(file: string, rows: readonly Dated[]): Fault {
  const first = rows.find((r) => r.file === file && LOCAL.test(writtenOf(r) ?? ''));
  return {
    code: 'dates',
    level: 'note',
    file,
    ...(first === undefined ? {} : { line: first.line }),
    found: `dates like ${first === undefined ? '' : writtenOf(first)}, which may be read two ways`,
    expected: 'dates as 2026-05-14',
    done: 'old balls of this file count as new ones',
  };
}
