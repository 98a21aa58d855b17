import type { Approach } from '@leeway/contract';
import {
  type Ball,
  clubKey,
  type ClubInBag,
  RAD_PER_DEG,
  type SwingBalls,
  swingKey,
  type Unseen,
  type Window,
} from '@leeway/engine';

const degOf = (acrossM: number, alongM: number): number => Math.atan2(acrossM, alongM) / RAD_PER_DEG;

/** The green as the fit sees it: carries and directions from the ball. */
function windowOf({ toFlagM, green }: Approach): Window {
  return {
    shortM: green.frontM,
    longM: green.backM,
    leftDeg: -degOf(green.leftM, toFlagM),
    rightDeg: degOf(green.rightM, toFlagM),
  };
}

/**
 * What an approach tells: a ball that is known only because its mark was found on the green, or the side that one missed it on. A mark off the green it was told with is
 * a ball of the course like any other; so is one on it where misses are told too, which say what the green does not show.
 */
export function evidenceOf(
  approach: Approach,
  missesTold: boolean,
): { readonly ball: Ball } | { readonly unseen: Unseen } {
  const window = windowOf(approach);
  const { found, toFlagM } = approach;
  if ('missed' in found) return { unseen: { window, side: found.missed } };
  const [alongM, acrossM] = [toFlagM + found.beyondFlagM, found.rightOfFlagM];
  const [carryM, directionDeg] = [Math.hypot(alongM, acrossM), degOf(acrossM, alongM)];
  const inside =
    !missesTold &&
    carryM >= window.shortM &&
    carryM <= window.longM &&
    directionDeg >= window.leftDeg &&
    directionDeg <= window.rightDeg;
  return { ball: { carryM, directionDeg, onCourse: true, ...(inside ? { seenIn: window } : {}) } };
}

/**
 * Swings with what approaches add to them; clubs that were hit at greens alone join them. Whoever tells the misses of a swing is taken to tell all its approaches;
 * otherwise its marks are those that greens show.
 */
export function withApproaches(
  swings: readonly SwingBalls[],
  approaches: readonly Approach[],
  bag: readonly ClubInBag[],
): readonly SwingBalls[] {
  const all = [...swings];
  const keyOf = ({ club, swing }: Approach): string => `${clubKey(club)}\n${swingKey(swing)}`;
  const missed = new Set(approaches.filter(({ found }) => 'missed' in found).map(keyOf));
  for (const approach of approaches) {
    const [club, swing] = [clubKey(approach.club), swingKey(approach.swing)];
    let at = all.findIndex((s) => clubKey(s.club) === club && swingKey(s.swing) === swing);
    if (at < 0) {
      const owned = bag.find((c) => clubKey(c.name) === club);
      const loft = owned?.loftDeg === undefined ? {} : { loftDeg: owned.loftDeg };
      at = all.push({ club: owned?.name ?? approach.club, swing: approach.swing, balls: [], ...loft }) - 1;
    }
    const before = all[at]!;
    const told = evidenceOf(approach, missed.has(keyOf(approach)));
    all[at] =
      'ball' in told
        ? { ...before, balls: [...before.balls, told.ball] }
        : { ...before, unseen: [...(before.unseen ?? []), told.unseen] };
  }
  return all;
}
