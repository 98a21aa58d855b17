import { offsetOf } from '../choice/view.ts';
import { normalCdf } from '../math/normal.ts';
import type { NormalPart } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Priced } from '../value/solution.ts';
import { atRest } from './patternAtRest.ts';

/** Where a ball finished, beside what its pattern predicted. */
export interface Finish {
  /** Beyond the spot, where a good strike finishes; short of it is negative. */
  readonly beyondSpotM: number;
  readonly rightOfSpotM: number;
  /** The pattern's chance of finishing no farther, and no farther right: even over 0 to 1 where the pattern is true. */
  readonly alongChance: number;
  readonly acrossChance: number;
  /** The pattern's chance of finishing short of the spot. */
  readonly shortChance: number;
}

export function finishOn(from: PlanePoint, played: Priced, at: PlanePoint): Finish {
  const parts = atRest(played, from);
  const ball = offsetOf(at, from, played.bearingRad);
  const spot = offsetOf(played.finishes, from, played.bearingRad);
  const chance = (of: (p: NormalPart) => number): number =>
    parts.reduce((sum, p) => sum + p.weight * normalCdf(of(p)), 0);
  return {
    beyondSpotM: ball.alongM - spot.alongM,
    rightOfSpotM: ball.acrossM - spot.acrossM,
    alongChance: chance((p) => (ball.alongM - p.alongM) / p.sdAlongM),
    acrossChance: chance((p) => (ball.acrossM - p.acrossM) / p.sdAcrossM),
    shortChance: chance((p) => (spot.alongM - p.alongM) / p.sdAlongM),
  };
}

/** Finishes over a season beside what the patterns predicted. */
export interface FinishesTold {
  readonly shots: number;
  /** Share that finished short of the spot, the share that the patterns predicted, and by how much those that did fell short on average. */
  readonly short: { readonly share: number; readonly predicted: number; readonly meanM: number };
  /** Share that finished inside what the pattern holds eight in ten by, along and across. */
  readonly in80: { readonly along: number; readonly across: number };
}

/** `undefined` without a finish whose aim was noted. */
export function finishesTold(finishes: readonly Finish[]): FinishesTold | undefined {
  const shots = finishes.length;
  if (shots === 0) return undefined;
  const short = finishes.filter((f) => f.beyondSpotM < 0);
  const inside = (chance: number): boolean => chance >= 0.1 && chance <= 0.9;
  const share = (counts: (f: Finish) => boolean): number => finishes.filter(counts).length / shots;
  return {
    shots,
    short: {
      share: short.length / shots,
      predicted: finishes.reduce((sum, f) => sum + f.shortChance, 0) / shots,
      meanM: short.reduce((sum, f) => sum - f.beyondSpotM, 0) / Math.max(1, short.length),
    },
    in80: { along: share((f) => inside(f.alongChance)), across: share((f) => inside(f.acrossChance)) },
  };
}
