/** Cells that a spreadsheet would take for a formula begin with one of these; a tab or a return may stand before it. */
const FORMULA = /^[\s]*[=+\-@]/;
const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i;

/**
 * A table as CSV (RFC 4180). Text that a spreadsheet would run gets an apostrophe before it, which shows that it is text; numbers stay as they
 * are, negative ones too.
 */
export const csvOf = (headings: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [headings, ...rows].map((row) => `${row.map(cellOf).join(',')}\r\n`).join('');

function cellOf(cell: string | number): string {
  const text = String(cell);
  const safe = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}
