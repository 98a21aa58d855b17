import type { Fault, Read } from '@leeway/contract';
import { CsvError, parse } from 'csv-parse/browser/esm/sync';

/** A row of a table with the line it ends on. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export const CAP = { bytes: 32e6, rows: 20_000, columns: 200, cell: 2000, record: 100_000 } as const;

const DELIMITERS = [',', ';', '\t', '|'] as const;
type Delimiter = (typeof DELIMITERS)[number];

export interface Table {
  readonly rows: readonly TableRow[];
  readonly delimiter: Delimiter;
}

/** Broken quotes mended, at most, before the file is given up. */
const MOST_MENDED = 20;

/**
 * The rows of CSV or TSV text, blank ones left out. The delimiter is the one that gives most rows the same number of cells. A quote that is never
 * closed costs its line only, which is reported; more than 20 of them, or more rows, cells or characters than the caps, refuse the file.
 */
export function readTable(text: string, file: string): Read<Table> {
  const large = overLines(text, file);
  if (large !== undefined) return { faults: [large] };
  const delimiter = pickDelimiter(text);
  const rows: TableRow[] = [];
  const faults: Fault[] = [];
  let rest = text;
  let skipped = 0;
  for (;;) {
    const part = parseRows(rest, delimiter, CAP.rows + 1 - rows.length);
    for (const row of part.rows) rows.push({ line: row.line + skipped, cells: row.cells });
    if (part.brokenAt === undefined) break;
    const line = skipped + part.brokenAt;
    faults.push({
      code: 'quote',
      level: 'left out',
      file,
      line,
      found: part.found,
      expected: 'quotes in pairs',
      done: 'the line is left out',
    });
    if (faults.length > MOST_MENDED)
      return {
        faults: [
          ...faults,
          {
            code: 'quotes',
            level: 'refused',
            file,
            found: `more than ${MOST_MENDED} broken lines`,
            expected: 'a CSV file',
          },
        ],
      };
    rest = afterLine(rest, part.brokenAt);
    skipped = line;
  }
  const over = overCap(rows, file);
  if (over !== undefined) return { faults: [...faults, over] };
  return { value: { rows: rows.filter((r) => r.cells.some((c) => c !== '')), delimiter }, faults };
}

interface Parsed {
  readonly rows: readonly TableRow[];
  /** 1-based line of the record that could not be read, in the text given. */
  readonly brokenAt?: number;
  readonly found: string;
}

function parseRows(text: string, delimiter: Delimiter, most: number): Parsed {
  const rows: TableRow[] = [];
  let last = 0;
  try {
    parse(text, {
      delimiter,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      trim: true,
      to: most,
      max_record_size: CAP.record,
      on_record: (cells: string[], { lines }) => {
        rows.push({ line: lines, cells: cells.map(cleanCell) });
        last = lines;
        return null;
      },
    });
    return { rows, found: '' };
  } catch (error) {
    const found = error instanceof CsvError ? (QUOTE_WORDS[error.code] ?? 'a broken line') : 'a broken line';
    return { rows, brokenAt: last + 1 + blankLinesAfter(text, last), found };
  }
}

const QUOTE_WORDS: { readonly [code: string]: string } = {
  CSV_QUOTE_NOT_CLOSED: 'a quote that is never closed',
  CSV_INVALID_CLOSING_QUOTE: 'text after a closing quote',
  CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE: 'text after a closing quote',
  CSV_MAX_RECORD_SIZE: 'a line without end, or a quote that is closed far below',
};

/** Hard spaces are spaces; the rest of a cell stays as it is. */
const cleanCell = (cell: string): string => cell.replace(/[\u00A0\u202F\u2009]/g, ' ').trim();

const LINE_END = /\r\n|\n|\r/g;

function afterLine(text: string, line: number): string {
  LINE_END.lastIndex = 0;
  for (let i = 0; i < line; i++) if (LINE_END.exec(text) === null) return '';
  return text.slice(LINE_END.lastIndex);
}

function blankLinesAfter(text: string, line: number): number {
  const start = line === 0 ? text : afterLine(text, line);
  return /^(?:[ \t]*(?:\r\n|\n|\r))*/.exec(start)?.[0].match(LINE_END)?.length ?? 0;
}

/** Long lines and many lines are refused before they are parsed; a quoted cell may hold several lines, so there may be more lines than rows. */
function overLines(text: string, file: string): Fault | undefined {
  let line = 0;
  let start = 0;
  const refused = (found: string, expected: string): Fault => ({
    code: 'too-large',
    level: 'refused',
    file,
    line,
    found,
    expected,
  });
  while (start <= text.length) {
    line++;
    const found = text.slice(start, start + CAP.record + 1).search(/[\r\n]/);
    const end = found < 0 ? text.length : start + found;
    if (end - start > CAP.record) return refused('a very long line', `at most ${CAP.record} characters a line`);
    if (line > 3 * CAP.rows) return refused(`more than ${3 * CAP.rows} lines`, `at most ${CAP.rows} rows a file`);
    start = end + (text.startsWith('\r\n', end) ? 2 : 1);
  }
  return undefined;
}

function overCap(rows: readonly TableRow[], file: string): Fault | undefined {
  const refused = (line: number, found: string, expected: string): Fault => ({
    code: 'too-large',
    level: 'refused',
    file,
    line,
    found,
    expected,
  });
  if (rows.length > CAP.rows)
    return refused(rows[CAP.rows]?.line ?? 0, `more than ${CAP.rows} rows`, `at most ${CAP.rows} rows a file`);
  for (const row of rows) {
    if (row.cells.length > CAP.columns)
      return refused(row.line, `${row.cells.length} cells`, `at most ${CAP.columns} cells a row`);
    if (row.cells.some((c) => c.length > CAP.cell))
      return refused(row.line, 'a very long cell', `at most ${CAP.cell} characters a cell`);
  }
  return undefined;
}

/** By the stability of the column count in the first rows: the share of rows that agree, then the count they agree on. */
function pickDelimiter(text: string): Delimiter {
  let best: Delimiter = ',';
  let bestScore = -1;
  const sample = text.slice(0, 60_000);
  for (const delimiter of DELIMITERS) {
    const counts = new Map<number, number>();
    const { rows } = parseRows(sample, delimiter, 300);
    for (const row of rows) counts.set(row.cells.length, (counts.get(row.cells.length) ?? 0) + 1);
    let score = 0;
    for (const [count, times] of counts)
      if (count > 1) score = Math.max(score, (times / rows.length) * Math.log(1 + count));
    if (score > bestScore + 1e-9) [best, bestScore] = [delimiter, score];
  }
  return best;
}
