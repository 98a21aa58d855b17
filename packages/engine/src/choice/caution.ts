import type { Caution } from '../ground/hole.ts';
import type { NormalPart, Pattern } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState } from '../value/solution.ts';
import { insideRing } from '../geometry/polygon.ts';
import { alongLine, offsetOf, placeAt } from './view.ts';

const HELD = 0.95;
const EDGE_STEP_M = 2;
const POINTS = 1200;
const QUANTILE_HALVINGS = 30;
/** Nothing of the region lies farther than this many standard deviations from a part's mean. */
const FAR_SD = 6;
/** A stated spread of nought is taken for this, so that densities stay finite. */
const LEAST_SD_M = 0.05;

/** Density of a mixture of normals, per square metre. */
function densityAt(parts: readonly NormalPart[], alongM: number, acrossM: number): number {
  let density = 0;
  for (const p of parts) {
    const x = (alongM - p.alongM) / p.sdAlongM;
    const y = (acrossM - p.acrossM) / p.sdAcrossM;
    if (Math.abs(x) > FAR_SD || Math.abs(y) > FAR_SD) continue;
    const rest = 1 - p.corr ** 2;
    const square = (x * x - 2 * p.corr * x * y + y * y) / rest;
    density += (p.weight * Math.exp(-square / 2)) / (2 * Math.PI * p.sdAlongM * p.sdAcrossM * Math.sqrt(rest));
  }
  return density;
}

/**
 * The density above which a pattern holds 95 balls in 100: the edge of its highest-density region, which is no ellipse. Found as the 5 %
 * quantile of the density over balls of the pattern itself, laid out by an additive recurrence (golden-section steps in two directions).
 */
function edgeDensity(parts: readonly NormalPart[]): number {
  const counts = parts.map((part) => Math.max(60, Math.round(POINTS * part.weight)));
  const total = counts.reduce((sum, n) => sum + n, 0);
  const densities = new Float64Array(total);
  const weights = new Float64Array(total);
  let at = 0;
  for (const [k, part] of parts.entries()) {
    const n = counts[k] ?? 0;
    for (let i = 0; i < n; i++, at++) {
      const radius = Math.sqrt(-2 * Math.log(1 - ((0.5 + i * 0.7548776662466927) % 1)));
      const angle = 2 * Math.PI * ((0.5 + i * 0.5698402909980532) % 1);
      const z = radius * Math.cos(angle);
      const across = part.corr * z + Math.sqrt(1 - part.corr ** 2) * radius * Math.sin(angle);
      densities[at] = densityAt(parts, part.alongM + part.sdAlongM * z, part.acrossM + part.sdAcrossM * across);
      weights[at] = part.weight / n;
    }
  }
  return weightedQuantile(densities, weights, 1 - HELD);
}

/** The least of some figures that holds a share of their weight at and below it: the interval it lies in is halved down. */
function weightedQuantile(figures: Float64Array, weights: Float64Array, share: number): number {
  let low = 0;
  let high = figures.reduce((most, x) => Math.max(most, x), 0);
  for (let k = 0; k < QUANTILE_HALVINGS; k++) {
    const middle = (low + high) / 2;
    let below = 0;
    for (let i = 0; i < figures.length; i++) if (figures[i]! <= middle) below += weights[i]!;
    if (below >= share) high = middle;
    else low = middle;
  }
  return high;
}

/** What the region that holds 95 balls in 100 reaches, for any aim: the region is worked out once. `runM` moves pitches to places of rest. */
export function reachOf(
  pattern: Pattern,
  runM: number,
  from: BallState,
  cautions: readonly Caution[],
): (bearing: number) => Caution[] {
  const parts = pattern.parts.map((p) => ({
    ...p,
    alongM: p.alongM + runM,
    sdAlongM: Math.max(LEAST_SD_M, p.sdAlongM),
    sdAcrossM: Math.max(LEAST_SD_M, p.sdAcrossM),
  }));
  const edge = edgeDensity(parts);
  const farM = Math.max(...parts.map((p) => Math.hypot(p.alongM, p.acrossM) + FAR_SD * (p.sdAlongM + p.sdAcrossM)));
  const holds = (p: PlanePoint, bearing: number): boolean => {
    const { alongM, acrossM } = offsetOf(p, from.at, bearing);
    return Math.hypot(alongM, acrossM) < farM && densityAt(parts, alongM, acrossM) >= edge;
  };
  const outlines = cautions.map((caution) => ({
    caution,
    points: alongLine(caution.points, caution.closed, EDGE_STEP_M),
  }));
  return (bearing) =>
    outlines
      .filter(
        ({ caution, points }) =>
          points.some((p) => holds(p, bearing)) ||
          (caution.closed &&
            parts.some((p) => {
              const middle = placeAt(from.at, bearing, p.alongM, p.acrossM);
              return holds(middle, bearing) && insideRing(middle, caution.points);
            })),
      )
      .map(({ caution }) => caution);
}
