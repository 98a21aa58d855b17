import { readUnit, type Unit } from './units.ts';

export type DecimalMark = '.' | ',';

const MISSING = new Set(['', '-', '--', '---', '–', '—', 'n/a', 'na', 'n.a.', 'nan', 'null', 'none', '#n/a', '?', 'x']);

/** Whether a cell says that there is no reading. */
export const isMissing = (cell: string): boolean => MISSING.has(cell.trim().toLowerCase());

/**
 * The decimal mark of a table by the vote of its cells: `142,5` speaks for the comma, `142.5` for the point; three figures after the
 * mark may be thousands and do not vote. The point when nobody votes.
 */
export function voteDecimalMark(cells: Iterable<string>): DecimalMark {
  let comma = 0;
  let point = 0;
  for (const cell of cells) {
    const mark = /^[^\d]*\d+([.,])(\d+)\s*\D*$/.exec(cell);
    if (mark === null) continue;
    const figures = mark[2]?.length ?? 0;
    const leadingNought = /^[^\d]*0[.,]/.test(cell);
    if (figures === 3 && !leadingNought) continue;
    if (mark[1] === ',') comma++;
    else point++;
  }
  return comma > point ? ',' : '.';
}

export interface Reading {
  readonly value: number;
  /** The unit written in the cell itself. */
  readonly unit?: Unit;
}

const THOUSANDS = { '.': /^\d{1,3}(?:[, ']\d{3})+(?:\.\d+)?$/, ',': /^\d{1,3}(?:[. ']\d{3})+(?:,\d+)?$/ } as const;
const PLAIN = { '.': /^(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i, ',': /^(?:\d+,?\d*|,\d+)$/ } as const;

/** A cell as a number; `undefined` when it is not one in this decimal mark. Typographic minus signs and a unit after the figure are understood. */
export function readNumber(cell: string, mark: DecimalMark): Reading | undefined {
  const found = /^([+\-−–]?)\s*([\d.,' ]*\d[\d.,]*(?:e[+-]?\d{1,3})?)\s*([^\d\s.,][^\d]*)?$/i.exec(cell.trim());
  if (found === null) return undefined;
  const [, sign = '', figures = '', word] = found;
  const value = readFigures(figures.trim(), mark);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  const unit = word === undefined ? undefined : readUnit(word);
  if (word !== undefined && unit === undefined) return undefined;
  const signed = sign === '' || sign === '+' ? value : -value;
  return unit === undefined ? { value: signed } : { value: signed, unit };
}

function readFigures(figures: string, mark: DecimalMark): number | undefined {
  if (THOUSANDS[mark].test(figures)) {
    const bare = mark === '.' ? figures.replace(/[, ']/g, '') : figures.replace(/[. ']/g, '').replace(',', '.');
    return Number(bare);
  }
  return PLAIN[mark].test(figures) ? Number(figures.replace(',', '.')) : undefined;
}

/** A sideways distance: signed (right is plus), or with a letter or word for its side: `4 L`, `4R`, `L4`, `12 left`. */
export function readSide(cell: string, mark: DecimalMark): Reading | undefined {
  const text = cell.trim();
  const before = /^(l|r|left|right)\s*(?=[\d.,])/i.exec(text)?.[1];
  const after = /(?<=[\d\s.a-z])(l|r|left|right)$/i.exec(text)?.[1];
  if (before === undefined && after === undefined) return readNumber(text, mark);
  if (before !== undefined && after !== undefined) return undefined;
  const rest = before === undefined ? text.slice(0, -(after ?? '').length) : text.slice(before.length);
  const reading = readNumber(rest, mark);
  if (reading === undefined || reading.value < 0) return undefined;
  const left = (before ?? after ?? '').toLowerCase().startsWith('l');
  return { ...reading, value: left ? -reading.value : reading.value };
}
