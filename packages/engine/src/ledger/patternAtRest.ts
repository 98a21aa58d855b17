import { offsetOf } from '../choice/view.ts';
import type { NormalPart } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Priced } from '../value/solution.ts';

/** A part without spread is told apart from others all the same. */
const LEAST_SD_M = 0.01;

/** The pattern where it comes to rest, along and across the aim: run on, and turned by the run, as the good strike is, in proportion to length. */
export function atRest({ lands, finishes, pattern, bearingRad }: Priced, at: PlanePoint): readonly NormalPart[] {
  const pitched = offsetOf(lands, at, bearingRad);
  const rested = offsetOf(finishes, at, bearingRad);
  const longer = rested.alongM / pitched.alongM;
  const turned = (rested.acrossM - longer * pitched.acrossM) / pitched.alongM;
  return pattern.parts.map((p) => ({
    ...p,
    alongM: p.alongM * longer,
    acrossM: p.acrossM * longer + p.alongM * turned,
    sdAlongM: Math.max(LEAST_SD_M, p.sdAlongM * longer),
    sdAcrossM: Math.max(LEAST_SD_M, p.sdAcrossM * longer),
  }));
}
