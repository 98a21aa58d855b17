import type { HoleGround } from '../ground/hole.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';
import type { Landmark } from './landmark.ts';
import { distanceM } from '../geometry/segment.ts';
import { alongLine, offsetOf } from './view.ts';

/** A thing the player can see to start the ball at: on it when `offsetM` is nought, else so far to its right (left is negative). */
export interface StartLine {
  readonly landmark: Landmark | 'flag';
  /** The side of the feature that is meant. */
  readonly edge: 'left' | 'right' | 'middle';
  readonly offsetM: number;
}

const ON_LINE_M = YARD_M;
const FARTHEST_OFFSET_M = 30;
const NEAREST_M = 30;
/** Features this far beyond the aim still stand behind it, as seen from the ball. */
const BEYOND_M = 60;
const EDGE_STEP_M = 1;
const SEEN: ReadonlySet<string> = new Set(['bunker', 'penalty', 'recovery', 'green']);

/** The start line down `bearingRad`: the side edge of a feature within a yard of the aim line if there is one, else the nearest edge and how far from it. */
export function startLine(
  ground: HoleGround,
  marks: ReadonlyMap<number, Landmark>,
  ball: PlanePoint,
  bearingRad: number,
  aimM: number,
): StartLine | undefined {
  const flag = offsetOf(ground.flag, ball, bearingRad);
  const flagM = distanceM(ball, ground.flag);
  if (Math.abs(flag.acrossM) <= ON_LINE_M && flag.alongM > 0 && flagM <= aimM + BEYOND_M) {
    return { landmark: 'flag', edge: 'middle', offsetM: 0 };
  }
  const found: (StartLine & { awayM: number })[] = [];
  for (const landmark of new Set(marks.values())) {
    if (!SEEN.has(landmark.surface)) continue;
    const corners = landmark.areas.flatMap((i) => alongLine(ground.areas[i]?.polygon.outer ?? [], true, EDGE_STEP_M));
    const sides = seen(corners, ball, bearingRad, aimM);
    if (sides === undefined) continue;
    for (const edge of ['left', 'right'] as const) {
      const { alongM, acrossM } = sides[edge];
      if (Math.abs(acrossM) > FARTHEST_OFFSET_M) continue;
      const offsetM = Math.abs(acrossM) <= ON_LINE_M ? 0 : -acrossM;
      found.push({ landmark, edge, offsetM, awayM: Math.abs(alongM - aimM) });
    }
  }
  const best = found.toSorted((a, b) => Math.abs(a.offsetM) - Math.abs(b.offsetM) || a.awayM - b.awayM)[0];
  return best && { landmark: best.landmark, edge: best.edge, offsetM: best.offsetM };
}

/** The left and right edge of a feature as seen from the ball, if all of it stands in front of the player and not too far beyond the aim. */
function seen(points: readonly PlanePoint[], ball: PlanePoint, bearingRad: number, aimM: number) {
  const offsets = points.map((p) => offsetOf(p, ball, bearingRad));
  const [first] = offsets;
  if (first === undefined || offsets.some((o) => o.alongM < NEAREST_M)) return undefined;
  if (Math.min(...offsets.map((o) => o.alongM)) > aimM + BEYOND_M) return undefined;
  const slope = (o: { alongM: number; acrossM: number }): number => o.acrossM / o.alongM;
  let left = first;
  let right = first;
  for (const o of offsets) {
    if (slope(o) < slope(left)) left = o;
    if (slope(o) > slope(right)) right = o;
  }
  return { left, right };
}
