import type { HoleGround } from '../ground/hole.ts';
import type { PlayFrame } from './playFrame.ts';

/** The way a ball comes to a place, as a unit vector of the play frame. */
export type Flow = (u: number, v: number) => readonly [number, number];

/** About how far back along the hole a long shot was played from. */
const PLAYED_FROM_M = 190;
/** Places nearer than this to where they would have been played from take the way of the hole there. */
const TOO_NEAR_M = 25;

/** A leg of the hole line: where it begins, how far on that is, its length and direction. */
interface Leg {
  readonly u: number;
  readonly v: number;
  readonly fromM: number;
  readonly lengthM: number;
  readonly way: readonly [number, number];
}

/**
 * The way play comes to a place: the layers know where balls pitch and not whence they came, so a ball is taken to have been played from the hole line, 190 m
 * back along it or from its beginning.
 */
export function flowOf(ground: HoleGround, frame: PlayFrame): Flow {
  const legs = legsOf(ground, frame);
  return (u, v) => {
    const { leg, alongM } = nearestOn(legs, u, v);
    if (leg === undefined) return [0, 1];
    const from = placeOn(legs, leg.fromM + alongM - PLAYED_FROM_M);
    const lengthM = Math.hypot(u - from.u, v - from.v);
    return lengthM < TOO_NEAR_M ? leg.way : [(u - from.u) / lengthM, (v - from.v) / lengthM];
  };
}

function legsOf(ground: HoleGround, frame: PlayFrame): Leg[] {
  const corners = ground.line.length >= 2 ? ground.line : [ground.ball, ground.flag];
  const legs: Leg[] = [];
  let fromM = 0;
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1]!, corners[i]!];
    const [u, v] = [frame.u(a), frame.v(a)];
    const [du, dv] = [frame.u(b) - u, frame.v(b) - v];
    const lengthM = Math.hypot(du, dv);
    if (lengthM > 0) legs.push({ u, v, fromM, lengthM, way: [du / lengthM, dv / lengthM] });
    fromM += lengthM;
  }
  return legs;
}

function nearestOn(legs: readonly Leg[], u: number, v: number): { leg: Leg | undefined; alongM: number } {
  let found: { leg: Leg | undefined; alongM: number } = { leg: undefined, alongM: 0 };
  let least = Infinity;
  for (const leg of legs) {
    const alongM = Math.min(leg.lengthM, Math.max(0, (u - leg.u) * leg.way[0] + (v - leg.v) * leg.way[1]));
    const away = Math.hypot(u - leg.u - alongM * leg.way[0], v - leg.v - alongM * leg.way[1]);
    if (away < least) [found, least] = [{ leg, alongM }, away];
  }
  return found;
}

/** The place of the hole line so far along it; its beginning for less than nought. */
function placeOn(legs: readonly Leg[], alongM: number): { readonly u: number; readonly v: number } {
  const leg = legs.findLast(({ fromM }) => fromM <= alongM) ?? legs[0]!;
  const onM = Math.max(0, alongM - leg.fromM);
  return { u: leg.u + onM * leg.way[0], v: leg.v + onM * leg.way[1] };
}
