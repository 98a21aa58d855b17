import { offsetOf, placeAt } from '../choice/view.ts';
import { normalQuantile } from '../math/normal.ts';
import type { NormalPart } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Priced } from '../value/solution.ts';
import { goodOf } from './goodStrike.ts';
import { atRest } from './patternAtRest.ts';

/** What the ball did beside what its pattern costs on average: four parts that add up to all of it. A gain is negative. */
export interface ExecutionLoss {
  /** By how much it was a mishit, or was not. */
  readonly strike: number;
  readonly direction: number;
  readonly length: number;
  /** The bounce and the lie: what the place where it finished does not explain. */
  readonly luck: number;
}

/** Even shares of a part in each direction. */
const ALONG = 24;
const ACROSS = 24;
const LINE = 48;

/** Middles of even shares of a normal: `normalQuantile((i + .5) / n)`, scaled to a variance of one. */
function quantiles(n: number): readonly number[] {
  const z = Array.from({ length: n }, (_, i) => normalQuantile((i + 0.5) / n));
  const sd = Math.sqrt(z.reduce((sum, x) => sum + x * x, 0) / n);
  return z.map((x) => x / sd);
}
const [Z_ALONG, Z_ACROSS, Z_LINE] = [quantiles(ALONG), quantiles(ACROSS), quantiles(LINE)];

interface Half {
  readonly parts: readonly NormalPart[];
  readonly weight: number;
  readonly cost: number;
}

/**
 * Splits what a ball cost over its pattern's mean, exactly. Strike is the mean cost of good strikes and of mishits, each by how likely the ball was one, over
 * the mean of both. Direction and length are what knowing each adds, the mean of both orders. Luck is the rest: its mean is the error of the sums here.
 * Runs are taken as the good strike's, in proportion to length.
 */
export function executionLoss(
  solution: HoleSolution,
  from: BallState,
  played: Priced,
  ball: { readonly finish: PlanePoint; readonly cost: number; readonly strike?: 'good' | 'mishit' },
): ExecutionLoss {
  const costAt = (along: number, across: number): number =>
    1 + solution.strokesAtRest(placeAt(from.at, played.bearingRad, along, across), from);
  const parts = atRest(played, from.at);
  const { alongM: x, acrossM: y } = offsetOf(ball.finish, from.at, played.bearingRad);

  const isGood = goodOf(parts);
  const halves = [parts.filter(isGood), parts.filter((p) => !isGood(p))]
    .filter((of) => of.length > 0)
    .map((of): Half => {
      const weight = of.reduce((sum, p) => sum + p.weight, 0);
      return { parts: of, weight, cost: of.reduce((sum, p) => sum + (p.weight / weight) * meanCost(p, costAt), 0) };
    });
  const whole = halves.reduce((sum, h) => sum + h.weight * h.cost, 0);
  const shares = sharesOf(halves, x, y, ball.strike, isGood);

  const here = costAt(x, y);
  let [strike, direction, length] = [-whole, 0, 0];
  halves.forEach((half, k) => {
    const share = shares[k] ?? 0;
    if (share === 0) return;
    const byAcross = conditional(half.parts, y, 'across', costAt);
    const byAlong = conditional(half.parts, x, 'along', costAt);
    strike += share * half.cost;
    direction += (share * (byAcross - half.cost + here - byAlong)) / 2;
    length += (share * (byAlong - half.cost + here - byAcross)) / 2;
  });
  return { strike, direction, length, luck: ball.cost - played.strokes - strike - direction - length };
}

/** How likely the ball was of each half, by where it finished, unless it was noted. */
function sharesOf(
  halves: readonly Half[],
  x: number,
  y: number,
  noted: 'good' | 'mishit' | undefined,
  isGood: (p: NormalPart) => boolean,
): readonly number[] {
  const said = halves.map(({ parts }) => (parts.some(isGood) ? 'good' : 'mishit') === noted);
  if (said.some(Boolean)) return said.map(Number);
  const logs = halves.map(({ parts }) => logSum(parts.map((p) => Math.log(p.weight) + logDensity(p, x, y))));
  const all = logSum(logs);
  return logs.map((l) => Math.exp(l - all));
}

function meanCost(p: NormalPart, costAt: (along: number, across: number) => number): number {
  const rest = Math.sqrt(1 - p.corr * p.corr);
  let sum = 0;
  for (const a of Z_ALONG) {
    for (const c of Z_ACROSS)
      sum += costAt(p.alongM + p.sdAlongM * a, p.acrossM + p.sdAcrossM * (p.corr * a + rest * c));
  }
  return sum / (ALONG * ACROSS);
}

/** Mean cost of balls of these parts, given how far along or across they are. */
function conditional(
  parts: readonly NormalPart[],
  given: number,
  which: 'along' | 'across',
  costAt: (along: number, across: number) => number,
): number {
  const logs = parts.map((p) => {
    const [mean, sd] = which === 'along' ? [p.alongM, p.sdAlongM] : [p.acrossM, p.sdAcrossM];
    return Math.log(p.weight) - Math.log(sd) - ((given - mean) / sd) ** 2 / 2;
  });
  const all = logSum(logs);
  return parts.reduce((sum, p, i) => {
    const share = Math.exp((logs[i] ?? -Infinity) - all);
    if (share < 1e-9) return sum;
    const rest = Math.sqrt(1 - p.corr * p.corr);
    const mean = Z_LINE.reduce((line, z) => {
      if (which === 'across') {
        const along = p.alongM + p.sdAlongM * ((p.corr * (given - p.acrossM)) / p.sdAcrossM + rest * z);
        return line + costAt(along, given);
      }
      const across = p.acrossM + p.sdAcrossM * ((p.corr * (given - p.alongM)) / p.sdAlongM + rest * z);
      return line + costAt(given, across);
    }, 0);
    return sum + (share * mean) / LINE;
  }, 0);
}

function logDensity(p: NormalPart, x: number, y: number): number {
  const a = (x - p.alongM) / p.sdAlongM;
  const c = (y - p.acrossM) / p.sdAcrossM;
  const free = 1 - p.corr * p.corr;
  return -(a * a - 2 * p.corr * a * c + c * c) / (2 * free) - Math.log(p.sdAlongM * p.sdAcrossM * Math.sqrt(free));
}

function logSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most === -Infinity ? most : most + Math.log(logs.reduce((sum, l) => sum + Math.exp(l - most), 0));
}
