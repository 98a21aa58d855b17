import { runM } from '../player/run.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { goodStrike, placeAt } from './view.ts';

/** Where the good strike's mean finishes, without pricing the stroke; `undefined` if it is not played from the lie. */
export function finishOf(solution: HoleSolution, from: BallState, stroke: Stroke): PlanePoint | undefined {
  const good = goodStrike(from, stroke);
  if (good === undefined) return undefined;
  const pitch = placeAt(from.at, stroke.bearingRad, good.alongM, good.acrossM);
  const onM = stroke.option.byLie[from.lie]?.rest === true ? 0 : runM(good.alongM, solution.surfaceAt(pitch));
  return placeAt(pitch, stroke.bearingRad, onM);
}
