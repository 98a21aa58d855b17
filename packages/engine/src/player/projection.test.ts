import { describe, expect, it } from 'vitest';
import { logBetaPdf } from '../math/gamma.ts';
import { interpolateRows } from '../math/interpolate.ts';
import { normalPdf } from '../math/normal.ts';
import { RAD_PER_DEG, YARD_M } from '../quantity/units.ts';
import { MISHIT_DIRECTION_SPREAD, SHORT_BETA, SHORT_SHARE, THIN_FULL } from '../stats/mishit.ts';
import { SkewNormal } from '../stats/twoPartModel.ts';
import type { NormalPart } from './option.ts';
import { partsOf, type TwoPartSwing } from './pattern.ts';

/** Tour strokes to hole out from a fairway by yards (Broadie, Interfaces 42 (2012) 146-165, table 9), with the green's putts below 10. */
const STROKES = [
  [0, 1.0],
  [3, 1.5],
  [10, 2.18],
  [20, 2.4],
  [40, 2.6],
  [60, 2.7],
  [100, 2.8],
  [140, 2.91],
  [180, 3.08],
  [220, 3.32],
  [260, 3.58],
] as const;

interface Hole {
  readonly flagM: number;
  /** Strokes more for a ball that pitches there. */
  readonly more: (alongM: number, acrossM: number) => number;
}
const valueAt = (hole: Hole, alongM: number, acrossM: number): number =>
  interpolateRows(STROKES, Math.hypot(hole.flagM - alongM, acrossM) / YARD_M) + hole.more(alongM, acrossM);

const N = 240;
/** Midpoints and masses of a density on [from, to], scaled to sum to 1. */
function grid(
  from: number,
  to: number,
  density: (x: number) => number,
): readonly (readonly [x: number, mass: number])[] {
  const step = (to - from) / N;
  const raw = Array.from({ length: N }, (_, i) => from + (i + 0.5) * step).map((x) => [x, density(x) * step] as const);
  const total = raw.reduce((sum, [, m]) => sum + m, 0);
  return raw.map(([x, m]) => [x, m / total] as const);
}
const normalGrid = (mean: number, sd: number): ReturnType<typeof grid> =>
  grid(mean - 6 * sd, mean + 6 * sd, (x) => normalPdf((x - mean) / sd) / sd);

/** Logarithm of the short side's width over the long side's: the prior's own, and two of its standard deviations beyond. */
const SKEWS = [0.06, 0.3] as const;

/** Expected value under carry and direction themselves: skew good strikes, beta short mishits, thin ones. */
function underTheModel(s: TwoPartSwing, hole: Hole, skew: number): number {
  const mean = (carries: ReturnType<typeof grid>, sdDeg: number): number => {
    let sum = 0;
    for (const [deg, m] of normalGrid(s.directionDeg, sdDeg))
      for (const [carry, w] of carries)
        sum += m * w * valueAt(hole, carry * Math.cos(deg * RAD_PER_DEG), carry * Math.sin(deg * RAD_PER_DEG));
    return sum;
  };
  const wide = s.directionSdDeg * MISHIT_DIRECTION_SPREAD;
  const beta = grid(0, 1, (x) => Math.exp(logBetaPdf(x, SHORT_BETA.a, SHORT_BETA.b)));
  const short = mean(
    beta.map(([x, m]) => [x * s.carryM, m] as const),
    wide,
  );
  const thin = mean(normalGrid(s.carryM * THIN_FULL.mean, s.carryM * THIN_FULL.sd), wide);
  const strike = new SkewNormal(skew);
  const { carryM, sdCarryM } = s;
  const good = mean(
    grid(carryM - 6 * sdCarryM, carryM + 6 * sdCarryM, (x) => strike.pdf((x - carryM) / sdCarryM)),
    s.directionSdDeg,
  );
  return (1 - s.mishitShare) * good + s.mishitShare * (SHORT_SHARE * short + (1 - SHORT_SHARE) * thin);
}

function underTheNormals(parts: readonly NormalPart[], hole: Hole): number {
  let sum = 0;
  for (const p of parts) {
    const acrossGrid = normalGrid(0, 1);
    for (const [u, m] of normalGrid(0, 1))
      for (const [v, w] of acrossGrid) {
        const across = p.acrossM + p.sdAcrossM * (p.corr * u + Math.sqrt(1 - p.corr ** 2) * v);
        sum += p.weight * m * w * valueAt(hole, p.alongM + p.sdAlongM * u, across);
      }
  }
  return sum;
}

const IRON: TwoPartSwing = {
  carryM: 140,
  sdCarryM: 9.8,
  directionDeg: 0,
  directionSdDeg: 4.3,
  corr: 0,
  mishitShare: 0.17,
  full: true,
};
const DRIVER: TwoPartSwing = { ...IRON, carryM: 200, sdCarryM: 14.7, directionSdDeg: 6.6, mishitShare: 0.145 };
const PLAIN: Hole['more'] = () => 0;
const pondRight: Hole['more'] = (along, across) => (across > 9 && across < 40 && along > 110 && along < 160 ? 1.1 : 0);
const pondShort: Hole['more'] = (along) => (along > 95 && along < 128 ? 1.1 : 0);
const outRight: Hole['more'] = (_, across) => (across > 32 ? 1.6 : 0);

describe('the normals in place of the two-part model', () => {
  it.each<[string, TwoPartSwing, Hole]>([
    ['an iron at a plain green', IRON, { flagM: 140, more: PLAIN }],
    ['an iron beside a pond', IRON, { flagM: 140, more: pondRight }],
    ['an iron over a pond', IRON, { flagM: 142, more: pondShort }],
    ['a drive with out of bounds on the right', DRIVER, { flagM: 380, more: outRight }],
    ['a drive that starts left', { ...DRIVER, directionDeg: -3 }, { flagM: 380, more: outRight }],
  ])('cost at most .003 strokes: %s', (_, swing, hole) => {
    const projected = underTheNormals(partsOf(swing), hole);
    for (const skew of SKEWS) {
      const off = Math.abs(projected - underTheModel(swing, hole, skew));
      expect(off).toBeLessThan(0.003);
    }
  });
});
