import type { HoleGround } from '../ground/hole.ts';
import { distanceM } from '../geometry/segment.ts';
import type { Surface } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { partOf, type PlayedShot } from './played.ts';

/** What players count: so many of so many. */
export interface Counts {
  readonly fairways: readonly [number, number];
  readonly greens: readonly [number, number];
  readonly upAndDown: readonly [number, number];
  readonly putts: number;
  readonly penalties: number;
}

export const NO_COUNTS: Counts = { fairways: [0, 0], greens: [0, 0], upAndDown: [0, 0], putts: 0, penalties: 0 };

const plus = ([a, b]: readonly [number, number], [c, d]: readonly [number, number]): [number, number] => [a + c, b + d];

export const addCounts = (a: Counts, b: Counts): Counts => ({
  fairways: plus(a.fairways, b.fairways),
  greens: plus(a.greens, b.greens),
  upAndDown: plus(a.upAndDown, b.upAndDown),
  putts: a.putts + b.putts,
  penalties: a.penalties + b.penalties,
});

/**
 * The counts of one hole. A fairway is hit when the tee shot of a par 4 or 5 stops on it (or on the green); a green, when it is reached with two strokes of par left;
 * up and down is a short-game stroke from off a green that was not so reached, and one putt at the most.
 */
export function countsOf(
  { par, flag }: Pick<HoleGround, 'par' | 'flag'>,
  shots: readonly PlayedShot[],
  surfaceAt: (p: PlanePoint) => Surface,
): Counts {
  const firstPutt = shots.findIndex((s) => s.from.lie === 'green');
  const before = firstPutt < 0 ? shots : shots.slice(0, firstPutt);
  const toGreen = before.reduce((sum, s) => sum + 1 + s.penaltyStrokes, 0);
  const inRegulation = toGreen <= par - 2;
  const tee = shots[0]?.finish;
  const surface = tee === undefined || tee === 'holed' ? 'green' : surfaceAt(tee);
  const onFairway = shots[0]?.penaltyStrokes === 0 && (surface === 'fairway' || surface === 'green');
  const chips = shots.filter((s) => partOf(s.from, distanceM(s.from.at, flag)) === 'short game').length;
  const putts = shots.filter((s) => s.from.lie === 'green').length;
  const tried = chips > 0 && !inRegulation;
  return {
    fairways: par < 4 ? [0, 0] : [onFairway ? 1 : 0, 1],
    greens: [inRegulation ? 1 : 0, 1],
    upAndDown: tried ? [chips + putts <= 2 ? 1 : 0, 1] : [0, 0],
    putts,
    penalties: shots.reduce((sum, s) => sum + s.penaltyStrokes, 0),
  };
}
