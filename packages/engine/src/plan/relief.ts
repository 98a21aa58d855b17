import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution } from '../value/solution.ts';
import { distanceM } from '../geometry/segment.ts';
import { bearingRad, placeAt } from '../choice/view.ts';

const BACK_M = 150;
/** Two lengths of a 45-inch club. */
const LATERAL_M = 2.3;
const LATERAL_POINTS = 16;
const STEP_M = 0.25;

/** Where the next stroke is played from, and whether it was dropped there. */
export interface NextBall {
  readonly state: BallState;
  readonly dropped: boolean;
}

/**
 * The state after a ball comes to rest at `rest`: as it lies; from a penalty area the drop that costs least under Rule 17 (on the line back
 * from the flag through the point of entry, or within two club-lengths of it when the area is red); out of bounds the stroke is replayed.
 * `undefined` on the green.
 */
export function nextBall(solution: HoleSolution, from: BallState, rest: PlanePoint): NextBall | undefined {
  const surface = solution.surfaceAt(rest);
  if (surface === 'green') return undefined;
  if (surface === 'out') return { state: from, dropped: true };
  if (surface !== 'penalty') return { state: stateAt(solution, rest), dropped: false };
  const drops = dropsAt(solution, from, rest).map((at) => ({ at, strokes: solution.strokesAtRest(at, from) }));
  const best = drops.toSorted((a, b) => a.strokes - b.strokes)[0];
  return { state: best === undefined ? from : stateAt(solution, best.at), dropped: true };
}

/** A ball at rest plays from what it lies on; a tee area plays as fairway. */
export function stateAt(solution: HoleSolution, at: PlanePoint): BallState {
  const surface = solution.surfaceAt(at);
  const lie = surface === 'tee' || surface === 'green' || surface === 'out' ? 'fairway' : surface;
  return { at, lie };
}

function dropsAt(solution: HoleSolution, from: BallState, rest: PlanePoint): PlanePoint[] {
  const { flag } = solution.ground;
  const entry = entryPoint(solution, from, rest);
  const away = bearingRad(flag, entry);
  const area = solution.ground.areas[solution.areaAt(rest)];
  const back = Array.from({ length: BACK_M }, (_, i) => placeAt(entry, away, i + 1));
  const round = Array.from({ length: LATERAL_POINTS }, (_, k) =>
    placeAt(entry, (2 * Math.PI * k) / LATERAL_POINTS, LATERAL_M),
  ).filter((p) => distanceM(p, flag) >= distanceM(entry, flag));
  return [...back, ...(area?.red === true ? round : [])].filter((p) => {
    const surface = solution.surfaceAt(p);
    return surface !== 'penalty' && surface !== 'out' && surface !== 'green';
  });
}

/** The last point where the straight line to `rest` enters the penalty area. */
function entryPoint(solution: HoleSolution, from: BallState, rest: PlanePoint): PlanePoint {
  const back = bearingRad(rest, from.at);
  const lengthM = distanceM(rest, from.at);
  let entry = rest;
  for (let m = STEP_M; m < lengthM; m += STEP_M) {
    const p = placeAt(rest, back, m);
    if (solution.surfaceAt(p) !== 'penalty') break;
    entry = p;
  }
  return entry;
}
