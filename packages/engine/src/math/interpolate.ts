/**
 * The value of `column` at `x` in rows that rise in column 0: linear between rows, the end rows held beyond.
 * NaN for an empty table.
 */
export function interpolateRows(rows: readonly (readonly number[])[], x: number, column = 1): number {
  let before = rows[0];
  if (before === undefined) return Number.NaN;
  for (const row of rows) {
    const [x0 = 0, x1 = 0] = [before[0], row[0]];
    const [y0 = Number.NaN, y1 = Number.NaN] = [before[column], row[column]];
    if (x < x1) return x1 === x0 ? y1 : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
    before = row;
  }
  return before[column] ?? Number.NaN;
}
