import { type Ball, type CourseAdds, type Random, RAD_PER_DEG, type Unseen, type Window } from '@leeway/engine';
import type { VirtualSwing } from './virtualBag.ts';
import { USUAL } from './world.ts';

/** What a player has on record of approaches with one club: marks on greens, and where the others missed. */
export interface ApproachLog {
  readonly marks: readonly Ball[];
  /** The same balls, for one who knows the misses too. */
  readonly balls: readonly Ball[];
  readonly misses: readonly Unseen[];
}

const YARD_M = 0.9144;
/** Paces to a mark are off by about this share of an approach's length, and a yard. */
const PACED_SHARE = 0.01;

/**
 * Approaches with one swing, until `n` have left a mark, at greens 20 to 34 yd deep and as wide, at a number that is `overYd` more than the swing's carry give or take 5: a ball that
 * comes down on the green leaves a mark that is paced; of the others only the side is known.
 */
export function virtualApproaches(
  swing: VirtualSwing,
  adds: CourseAdds,
  n: number,
  overYd: number,
  random: Random,
): ApproachLog {
  const balls: Ball[] = [];
  const marks: Ball[] = [];
  const misses: Unseen[] = [];
  while (marks.length < n) {
    const atM = swing.carryM + YARD_M * (overYd + 5 * random.normal());
    const deepM = YARD_M * (20 + 14 * random.next());
    const halfDeg = (YARD_M * (10 + 7 * random.next())) / atM / RAD_PER_DEG;
    const window: Window = {
      shortM: atM - deepM / 2,
      longM: atM + deepM / 2,
      leftDeg: -halfDeg,
      rightDeg: halfDeg,
    };
    const missed = random.next() < swing.mishitShare + adds.mishitShare;
    const sdM = Math.hypot(swing.sdCarryM, adds.distanceShare * swing.carryM);
    const carryM = missed ? swing.carryM * USUAL.mishitCarry(random, true) : swing.carryM + sdM * random.normal();
    const directionDeg =
      swing.directionDeg + swing.sdDirectionDeg * (missed ? USUAL.mishitDirection : 1) * random.normal();
    const side = sideOf(carryM, directionDeg, window);
    if (side !== undefined) {
      misses.push({ window, side });
      continue;
    }
    const seCarryM = Math.hypot(YARD_M, PACED_SHARE * carryM);
    const ball = { carryM: carryM + seCarryM * random.normal(), directionDeg, seCarryM, onCourse: true };
    balls.push(ball);
    marks.push({ ...ball, seenIn: window });
  }
  return { marks, balls, misses };
}

function sideOf(carryM: number, directionDeg: number, w: Window): Unseen['side'] | undefined {
  if (carryM < w.shortM) return 'short';
  if (carryM > w.longM) return 'long';
  if (directionDeg < w.leftDeg) return 'left';
  return directionDeg > w.rightDeg ? 'right' : undefined;
}
