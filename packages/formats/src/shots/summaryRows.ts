import { readClub } from '@leeway/engine';

const WORD =
  /(?:^|[^\p{L}])(?:average|averages|avg|ave|mean|median|std|stdev|std ?dev|st\.? ?dev\.?|standard deviation|deviation|dev|max|maximum|min|minimum|sum|summary|subtotal|total|totals|count|range|variance|consistency|session|σ|mittelwert|durchschnitt|moyenne|media)(?:[^\p{L}]|$)/iu;

const WHOLE_CELL =
  /^(?:averages?|avg\.?|mean|median|std\.? ?dev\.?|stdev|standard deviation|deviation|max|maximum|min|minimum|mittelwert|durchschnitt|moyenne):?$/i;

/**
 * Whether a row's words make it a row of averages, deviations or extremes: such a word in the club's cell (beside a club's name or alone),
 * or as the whole of another cell.
 */
export function hasSummaryWord(cells: readonly string[], clubAt: number): boolean {
  const club = cells[clubAt] ?? '';
  if (WORD.test(club) && readClub(club) === undefined) return true;
  return cells.some((cell, i) => i !== clubAt && WHOLE_CELL.test(cell));
}

/** Running sums of the rows of a block, by column. */
export class BlockSums {
  private count = 0;
  private readonly sums = new Map<number, { n: number; sum: number; sumSq: number }>();

  add(values: ReadonlyMap<number, number>): void {
    this.count++;
    for (const [column, x] of values) {
      const s = this.sums.get(column) ?? { n: 0, sum: 0, sumSq: 0 };
      s.n++;
      s.sum += x;
      s.sumSq += x * x;
      this.sums.set(column, s);
    }
  }

  /**
   * Whether a row equals, within its rounding, the mean (or the standard deviation) of the rows so far in every column it has, at least three
   * rows, and would do so by chance less often than `mostChance`.
   */
  isSummary(values: ReadonlyMap<number, number>, cells: readonly string[], mostChance: number): boolean {
    if (this.count < 3) return false;
    return this.chance(values, cells, 'mean') < mostChance || this.chance(values, cells, 'sd') < mostChance;
  }

  /** How often a shot would match by chance: over the columns, the width of the rounding times the density of a normal at its middle. */
  private chance(values: ReadonlyMap<number, number>, cells: readonly string[], what: 'mean' | 'sd'): number {
    let chance = 1;
    for (const [column, x] of values) {
      const s = this.sums.get(column);
      if (s === undefined || s.n < 3) return 1;
      const mean = s.sum / s.n;
      const variance = Math.max(0, s.sumSq / s.n - mean * mean);
      if (variance < 1e-9 * (1 + mean * mean)) continue;
      const rounding = 0.51 * 10 ** -decimalsOf(cells[column] ?? '') + 1e-9 * Math.abs(mean);
      const near = (y: number): boolean => Math.abs(x - y) <= rounding;
      const sd = Math.sqrt(variance);
      const matched = what === 'mean' ? near(mean) : near(sd) || near(sd * Math.sqrt(s.n / (s.n - 1)));
      if (!matched) return 1;
      chance *= Math.min(1, (2 * rounding * 0.4) / sd);
    }
    return chance;
  }
}

const decimalsOf = (cell: string): number => /[.,](\d+)\D*$/.exec(cell)?.[1]?.length ?? 0;
