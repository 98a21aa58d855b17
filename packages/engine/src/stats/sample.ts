/** A weighted sample of a distribution over several figures: `x` holds one point after another, weights sum to 1. */
export interface Sample {
  readonly figures: number;
  readonly x: Float64Array;
  readonly weights: Float64Array;
}

/** Mean of some function of a figure over the sample. */
export function meanOf(sample: Sample, figure: number, of: (x: number) => number = (x) => x): number {
  let sum = 0;
  for (let i = 0; i < sample.weights.length; i++)
    sum += sample.weights[i]! * of(sample.x[i * sample.figures + figure]!);
  return sum;
}

export function sdOf(sample: Sample, figure: number, mean = meanOf(sample, figure)): number {
  return Math.sqrt(
    Math.max(
      0,
      meanOf(sample, figure, (x) => (x - mean) ** 2),
    ),
  );
}

/** The same sample with a figure spread `times` as wide about its mean. */
export function widened(sample: Sample, figure: number, times: number): Sample {
  const mean = meanOf(sample, figure);
  const x = sample.x.slice();
  for (let i = figure; i < x.length; i += sample.figures) x[i] = mean + times * (x[i]! - mean);
  return { ...sample, x };
}

/** The figure below which these shares of the weight lie (rising), linear between the middles of the points. */
export function quantilesOf(sample: Sample, figure: number, shares: readonly number[]): readonly number[] {
  const n = sample.weights.length;
  const order = Array.from({ length: n }, (_, i) => i).toSorted(
    (a, b) => sample.x[a * sample.figures + figure]! - sample.x[b * sample.figures + figure]!,
  );
  const found: number[] = [];
  let before = 0;
  let [lastAt, lastX] = [0, sample.x[order[0]! * sample.figures + figure]!];
  let k = 0;
  for (const i of order) {
    const weight = sample.weights[i]!;
    const at = before + weight / 2;
    const x = sample.x[i * sample.figures + figure]!;
    while (k < shares.length && shares[k]! <= at) {
      const span = at - lastAt;
      found.push(span > 0 ? lastX + ((x - lastX) * Math.max(0, shares[k]! - lastAt)) / span : x);
      k++;
    }
    before += weight;
    [lastAt, lastX] = [at, x];
  }
  while (found.length < shares.length) found.push(lastX);
  return found;
}

/** `n` points drawn in proportion to their weights by systematic resampling, always the same. */
export function drawsOf(sample: Sample, n: number): readonly (readonly number[])[] {
  const draws: number[][] = [];
  let before = 0;
  for (let i = 0; i < sample.weights.length && draws.length < n; i++) {
    before += sample.weights[i]!;
    while (draws.length < n && (draws.length + 0.5) / n < before)
      draws.push([...sample.x.subarray(i * sample.figures, (i + 1) * sample.figures)]);
  }
  while (draws.length < n) draws.push([...sample.x.subarray(-sample.figures)]);
  return draws;
}
