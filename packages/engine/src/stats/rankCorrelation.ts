/**
 * Spearman's rank correlation of pairs, -1 to 1: Pearson's correlation of the ranks, equal values sharing the mean of theirs.
 * NaN when there are under two pairs or one side does not vary.
 */
export function rankCorrelation(pairs: readonly (readonly [number, number])[]): number {
  const x = ranks(pairs.map((p) => p[0]));
  const y = ranks(pairs.map((p) => p[1]));
  const middle = (pairs.length + 1) / 2;
  let xy = 0;
  let xx = 0;
  let yy = 0;
  x.forEach((rank, i) => {
    const [dx, dy] = [rank - middle, (y[i] ?? middle) - middle];
    xy += dx * dy;
    xx += dx * dx;
    yy += dy * dy;
  });
  return xy / Math.sqrt(xx * yy);
}

function ranks(values: readonly number[]): readonly number[] {
  const order = values.map((_, i) => i).toSorted((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  const rank = values.map(() => 0);
  for (let from = 0; from < order.length;) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1] ?? 0] === values[order[from] ?? 0]) to++;
    for (let k = from; k <= to; k++) rank[order[k] ?? 0] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return rank;
}
