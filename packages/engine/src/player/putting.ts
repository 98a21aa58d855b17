import { gaussLegendre } from '../math/gaussLegendre.ts';
import { normalCdf, normalPdf } from '../math/normal.ts';
import { FOOT_M, RAD_PER_DEG } from '../quantity/units.ts';
import type { PuttingParameters } from './file.ts';
import type { PuttingRow } from './option.ts';
import { handicapIndexOf, type Level } from './prior.ts';

/** The hole's radius less the ball's (4.25 in and 1.68 in across, Rules of Golf and Equipment Rules), metres. */
const HALF_WIDTH_M = ((4.25 - 1.68) / 2) * 0.0254;

/**
 * Putting by handicap index: the angle and length model fitted to tour putts (A. Gelman's case study after M. Broadie: 1.02 deg, 8 % of the
 * length, aims 1 ft past, drops up to 3 ft past), widened linearly in the index so that it meets two published points: average 2.00
 * putts from 33 ft for the tour and from 19 ft for players averaging 90. Above index 26 the slope is .6 of that.
 */
export function puttingPrior(level: Level): PuttingParameters {
  const index = handicapIndexOf(level);
  const u = index <= 26 ? index + 5.5 : 31.5 + 0.6 * (index - 26);
  return {
    sdAngleDeg: 1.02 + 0.026 * u,
    sdDistance: 0.08 + 0.00093 * u,
    pastM: Math.max(0.3, 1 - 0.014 * u) * FOOT_M,
    captureM: 3 * FOOT_M,
    holeHalfWidthM: HALF_WIDTH_M,
  };
}

/** The angle within which a putt of this length is caught, radians. */
const caughtRad = (p: PuttingParameters, distanceM: number): number =>
  Math.asin(Math.min(1, (p.holeHalfWidthM ?? HALF_WIDTH_M) / distanceM));

/**
 * Chance of holing from a distance: [2 Phi(asin(w/d)/s_a) - 1] [Phi((d+c - a)/(s_d a)) - Phi((d - a)/(s_d a))], a = d + past: the angle
 * is within the hole's half-width and the length between the hole and `captureM` beyond it.
 */
export function holingChance(p: PuttingParameters, distanceM: number): number {
  if (distanceM <= 0) return 1;
  const aimM = distanceM + p.pastM;
  const sdM = p.sdDistance * aimM;
  const straight = 2 * normalCdf(caughtRad(p, distanceM) / (p.sdAngleDeg * RAD_PER_DEG)) - 1;
  const far = normalCdf((distanceM + p.captureM - aimM) / sdM);
  return straight * (far - normalCdf((distanceM - aimM) / sdM));
}

/** Distances of the rows, metres: fine where the value bends. */
function distancesM(): readonly number[] {
  const rows = [0];
  for (let i = 1; i <= 60; i++) rows.push(i / 20);
  for (let i = 1; i <= 70; i++) rows.push(3 + i / 10);
  for (let i = 1; i <= 100; i++) rows.push(10 + i / 2);
  return rows;
}

/**
 * Expected putts by distance, 0 to 60 m: the same two spreads give the makes and, by where a missed putt stops, the leaves.
 * E(d) = 1 + sum over misses of chance x E(leave), solved by sweeps until no row moves by 1e-9 (at most 500). Between the rows E is
 * linear, within 3e-4. Tests hold it to the tour's published points and to an independent table within .002.
 */
export function puttingRows(p: PuttingParameters): readonly PuttingRow[] {
  const distances = distancesM();
  const weights = distances.map((d) => leaveWeights(p, d, distances));
  const strokes = distances.map(() => 1);
  for (let sweep = 0; sweep < 500; sweep++) {
    let moved = 0;
    for (let i = 1; i < distances.length; i++) {
      let sum = 1;
      weights[i]?.forEach((w, j) => {
        sum += w * (strokes[j] ?? 0);
      });
      moved = Math.max(moved, Math.abs(sum - (strokes[i] ?? 0)));
      strokes[i] = sum;
    }
    if (moved < 1e-9) break;
  }
  return distances.map((distanceM, i) => ({ distanceM, strokes: strokes[i] ?? 1 }));
}

/** Putts from a distance when the next ones, after a miss, are those of some rows: one step of the recursion. */
export function leaveMean(p: PuttingParameters, distanceM: number, rows: readonly PuttingRow[]): number {
  const distances = rows.map((row) => row.distanceM);
  let sum = 1;
  leaveWeights(p, distanceM, distances).forEach((w, j) => {
    sum += w * rows[j]!.strokes;
  });
  return sum;
}

/** Chances of one, two and three putts, and of four or more, and the mean that they make. */
export interface PuttChances {
  readonly mean: number;
  readonly chances: readonly [number, number, number, number];
}

/** By distance, nearest first: the model's makes and leaves followed through three putts, the rest taken as four. The mean rises from row to row. */
export function puttChanceRows(p: PuttingParameters): readonly PuttChances[] {
  const distances = distancesM();
  const weights = distances.map((d) => leaveWeights(p, d, distances));
  const within = (before: readonly number[], i: number): number => {
    let sum = distances[i] === 0 ? 1 : holingChance(p, distances[i]!);
    weights[i]?.forEach((w, j) => {
      sum += w * (before[j] ?? 0);
    });
    return Math.min(1, sum);
  };
  const one = distances.map((_, i) => within([], i));
  const two = distances.map((_, i) => within(one, i));
  const three = distances.map((_, i) => within(two, i));
  const rows: PuttChances[] = [];
  for (const [i, a] of one.entries()) {
    const [b, c] = [two[i]!, three[i]!];
    const mean = 4 - a - b - c;
    if (mean > (rows.at(-1)?.mean ?? 0)) rows.push({ mean, chances: [a, b - a, c - b, 1 - c] });
  }
  return rows;
}

const RULE = gaussLegendre(8);

/** Chance of each row's distance as the leave of a miss from `distanceM`; linear shares to the two rows around a leave. */
function leaveWeights(p: PuttingParameters, distanceM: number, rows: readonly number[]): Float64Array {
  const weights = new Float64Array(rows.length);
  if (distanceM === 0) return weights;
  const aimM = distanceM + p.pastM;
  const sdM = p.sdDistance * aimM;
  const sdRad = p.sdAngleDeg * RAD_PER_DEG;
  const edge = caughtRad(p, distanceM);
  const lengths = panels([
    aimM - 6 * sdM,
    aimM - 2 * sdM,
    distanceM,
    distanceM + p.captureM,
    aimM + 2 * sdM,
    aimM + 6 * sdM,
  ]);
  const angles = panels([0, edge, edge + sdRad, edge + 3 * sdRad, edge + 6 * sdRad]);
  for (const length of lengths) {
    const chanceOfLength = (length.weight * normalPdf((length.at - aimM) / sdM)) / sdM;
    const drops = length.at >= distanceM && length.at <= distanceM + p.captureM;
    for (const angle of angles) {
      if (drops && angle.at <= edge) continue;
      const chance = (2 * chanceOfLength * angle.weight * normalPdf(angle.at / sdRad)) / sdRad;
      if (chance < 1e-14) continue;
      const rolled = Math.max(0, length.at);
      const leave = Math.sqrt(rolled ** 2 + distanceM ** 2 - 2 * rolled * distanceM * Math.cos(angle.at));
      share(weights, rows, leave, chance);
    }
  }
  return weights;
}

/** Gauss-Legendre nodes on each panel between sorted limits. */
function panels(limits: readonly number[]): readonly { at: number; weight: number }[] {
  const sorted = limits.toSorted((a, b) => a - b);
  return sorted.slice(1).flatMap((to, i) => {
    const from = sorted[i] ?? to;
    const half = (to - from) / 2;
    if (half <= 0) return [];
    return RULE.nodes.map((x, k) => ({ at: from + half * (1 + x), weight: half * (RULE.weights[k] ?? 0) }));
  });
}

function share(weights: Float64Array, rows: readonly number[], x: number, chance: number): void {
  const last = rows.length - 1;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((rows[middle] ?? 0) <= x) low = middle;
    else high = middle;
  }
  const from = rows[low] ?? 0;
  const to = rows[high] ?? 1;
  const part = Math.min(1, Math.max(0, (x - from) / (to - from)));
  weights[low] = (weights[low] ?? 0) + chance * (1 - part);
  weights[high] = (weights[high] ?? 0) + chance * part;
}
