import { plainLine } from '../choice/plainLine.ts';
import { bearingRad } from '../choice/view.ts';
import { distanceM } from '../geometry/segment.ts';
import { normalQuantile } from '../math/normal.ts';
import type { Option } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { HoleSolution } from '../value/solution.ts';
import type { Bests } from './left.ts';

/** A line that a stroke may have been pointed down. */
export interface Aim {
  readonly bearingRad: number;
  readonly weight: number;
}

/** An aim that was not noted: how far players point from what they meant, our assumption. */
const SD_RAD = 2 * RAD_PER_DEG;
const SHARES = 5;
const Z = Array.from({ length: SHARES }, (_, i) => normalQuantile((i + 0.5) / SHARES));

/**
 * The aim as noted. Where none was, half the weight is about the option's best aim and half about the plain line, whatever the ball did: a choice is
 * judged by what could be known then.
 */
export function aimsOf(
  solution: HoleSolution,
  bests: Bests,
  option: Option,
  noted: PlanePoint | undefined,
): readonly Aim[] {
  const { state } = bests;
  if (noted !== undefined) return [{ bearingRad: bearingRad(state.at, noted), weight: 1 }];
  const best = bests.of(option) ?? bests.best;
  const plain = plainLine(solution, state, [option], distanceM(state.at, best.finishes));
  const meant = [best.bearingRad, plain?.shown.priced.bearingRad ?? best.bearingRad];
  return meant.flatMap((at) => Z.map((z) => ({ bearingRad: at + SD_RAD * z, weight: 1 / (meant.length * SHARES) })));
}
