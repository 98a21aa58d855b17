import { invertPositive } from '../math/cholesky.ts';

/** The top of a log density, and the covariance that its curvature there implies (Laplace's approximation). */
export interface Peak {
  readonly at: readonly number[];
  readonly height: number;
  readonly covariance: readonly (readonly number[])[];
  /** Whether the last step was under `close` standard deviations; `covariance` is usable either way. */
  readonly settled: boolean;
}

/**
 * Climbs a smooth log density from `start` by Newton's method with backtracking; derivatives by central differences of `steps`
 * (about a tenth of a standard deviation each). At most 30 steps. No figure is taken for more doubtful than about `widest` (the prior's standard
 * deviations): where the curvature says so it is not that of a peak, and the priors' own is added until it is.
 */
export function peakOf(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  widest: readonly number[],
  close = 1e-3,
): Peak {
  let at = start;
  let height = f(at);
  let covariance: readonly (readonly number[])[] = [];
  let settled = false;
  for (let round = 0; round < 30 && !settled; round++) {
    const { gradient, curvature } = derivatives(f, at, height, steps);
    const inverse = invertHeld(curvature, widest);
    ({ covariance } = inverse);
    const step = covariance.map((row) => row.reduce((sum, c, j) => sum + c * (gradient[j] ?? 0), 0));
    settled = !inverse.held && step.every((d, i) => Math.abs(d) < close * Math.sqrt(covariance[i]?.[i] ?? 0));
    if (settled) break;
    const next = climb(f, at, height, step);
    if (next === undefined) break;
    at = next.at;
    height = next.height;
  }
  return { at, height, covariance, settled };
}

/** A covariance wider than this many of the widest standard deviations is none. */
const TOO_WIDE = 1.5;

function invertHeld(
  curvature: readonly (readonly number[])[],
  widest: readonly number[],
): { readonly covariance: readonly (readonly number[])[]; readonly held: boolean } {
  for (let weight = 0; weight < 1e6; weight = weight === 0 ? 1 : 4 * weight) {
    const inverse = invertPositive(
      curvature.map((row, i) => row.map((v, j) => (i === j ? v + weight / widest[i]! ** 2 : v))),
    );
    if (inverse?.every((row, i) => row[i]! < (TOO_WIDE * widest[i]!) ** 2) === true)
      return { covariance: inverse, held: weight > 0 };
  }
  return { covariance: widest.map((sd, i) => widest.map((_, j) => (i === j ? sd ** 2 : 0))), held: true };
}

function climb(
  f: (x: readonly number[]) => number,
  at: readonly number[],
  height: number,
  step: readonly number[],
): { readonly at: readonly number[]; readonly height: number } | undefined {
  for (let share = 1; share > 1e-4; share /= 2) {
    const next = at.map((x, i) => x + share * (step[i] ?? 0));
    const reached = f(next);
    if (reached > height) return { at: next, height: reached };
  }
  return undefined;
}

function derivatives(
  f: (x: readonly number[]) => number,
  at: readonly number[],
  height: number,
  steps: readonly number[],
): { readonly gradient: readonly number[]; readonly curvature: readonly (readonly number[])[] } {
  const moved = (i: number, a: number, j: number, b: number): number =>
    f(at.map((x, k) => x + (k === i ? a * (steps[i] ?? 0) : 0) + (k === j ? b * (steps[j] ?? 0) : 0)));
  const n = at.length;
  const up = at.map((_, i) => moved(i, 1, -1, 0));
  const down = at.map((_, i) => moved(i, -1, -1, 0));
  const gradient = at.map((_, i) => ((up[i] ?? 0) - (down[i] ?? 0)) / (2 * (steps[i] ?? 1)));
  const curvature = Array.from({ length: n }, () => at.map(() => 0));
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const scale = (steps[i] ?? 1) * (steps[j] ?? 1);
      const second =
        i === j
          ? ((up[i] ?? 0) - 2 * height + (down[i] ?? 0)) / scale
          : (moved(i, 1, j, 1) - moved(i, 1, j, -1) - moved(i, -1, j, 1) + moved(i, -1, j, -1)) / (4 * scale);
      const [rowI, rowJ] = [curvature[i], curvature[j]];
      if (rowI && rowJ) rowI[j] = rowJ[i] = -second;
    }
  return { gradient, curvature };
}
