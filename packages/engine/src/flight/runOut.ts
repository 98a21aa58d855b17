import type { Surface } from '../quantity/lies.ts';
import { GRAVITY_MPS2 } from './aerodynamics.ts';
import { bounce, type Impact } from './bounce.ts';
import type { Flight } from './launch.ts';
import { type GroundToday, turfOf } from './surfaces.ts';

/** The ground at a place: what it is, and how much it rises for each metre in the direction that the ball runs. */
export interface GroundAt {
  readonly surface: Surface;
  readonly slope?: number;
}

/** The ground down the line of a run: `alongM` on from where the ball landed (before it, when below nought). */
export type GroundAlong = (alongM: number) => GroundAt;

/** How a ball reaches the ground: speed over it and down to it, and its backspin. */
export interface Touchdown {
  readonly forwardMps: number;
  readonly downMps: number;
  readonly backspinRpm: number;
}

export interface RunOut {
  /** From landing to rest, along the line that the ball landed on; below nought when it comes back. */
  readonly runM: number;
  /** Where it rests. */
  readonly surface: Surface;
  readonly end: 'stopped' | 'stayed' | 'plugged' | 'ran away';
  /** How many times it hopped. */
  readonly hops: number;
  /** Nobody told how firm the ground is, so normal was taken. */
  readonly firmnessAssumed: boolean;
}

const LOWEST_HOP_M = 0.005;
const MOST_HOPS = 100;
/** The ground is looked at so often while a ball rolls. */
const ROLL_STEP_M = 0.25;
const LONGEST_RUN_M = 300;

/** A flight's end, as the ground meets it. */
export const touchdownOf = (f: Flight): Touchdown => ({
  forwardMps: Math.hypot(f.alongMps, f.rightMps),
  downMps: -f.upMps,
  backspinRpm: f.landingSpinRpm,
});

/**
 * Bounce and roll: Penner's bounces and drag-free hops while they rise 5 mm, then a roll that slows by 5/7 g (rho cos s + sin s) on a slope
 * s. A ball stays where it meets sand or water; one that comes on to other turf is slowed by that. Held to observed runs on normal
 * ground; expect +-40 %, and half the run from shot to shot. A ball that stops on a slope stays there, and sidespin turns none.
 */
export function runOut(ball: Touchdown, along: GroundAlong, today: GroundToday = {}): RunOut {
  const done = ending(along, today);
  if (today.plugging && turfOf(along(0).surface, today) !== undefined) return done(0, 0, 'plugged');
  let at = 0;
  let [forward, down] = [ball.forwardMps, ball.downMps];
  const impact: Impact = { forwardMps: 0, normalMps: 0, backspin: (ball.backspinRpm * 2 * Math.PI) / 60 };
  for (let hops = 0; ; hops++) {
    const ground = along(at);
    const turf = turfOf(ground.surface, today);
    if (turf === undefined) return done(at, hops, 'stayed');
    const slope = Math.atan(ground.slope ?? 0);
    const [cos, sin] = [Math.cos(slope), Math.sin(slope)];
    impact.forwardMps = forward * cos - down * sin;
    impact.normalMps = forward * sin + down * cos;
    if (impact.normalMps > 0) bounce(impact, turf);
    const rises = impact.normalMps ** 2 / (2 * GRAVITY_MPS2 * cos) >= LOWEST_HOP_M && impact.normalMps > 0;
    if (!rises || hops === MOST_HOPS) return roll(impact.forwardMps, at, hops, along, today);
    forward = impact.forwardMps * cos - impact.normalMps * sin;
    const up = impact.forwardMps * sin + impact.normalMps * cos;
    const timeS = (2 * (up - (forward * sin) / cos)) / GRAVITY_MPS2;
    at += forward * timeS;
    down = GRAVITY_MPS2 * timeS - up;
  }
}

/** A ball that rolls from the start, at a speed along the ground (below nought: backwards). */
export const rollOut = (speedMps: number, along: GroundAlong, today: GroundToday = {}): RunOut =>
  roll(speedMps, 0, 0, along, today);

function roll(speedMps: number, fromM: number, hops: number, along: GroundAlong, today: GroundToday): RunOut {
  const done = ending(along, today);
  const way = speedMps < 0 ? -1 : 1;
  let at = fromM;
  let speedSq = speedMps * speedMps;
  while (Math.abs(at) < LONGEST_RUN_M) {
    const ground = along(at);
    const turf = turfOf(ground.surface, today);
    if (turf === undefined) return done(at, hops, 'stayed');
    const slope = Math.atan(ground.slope ?? 0);
    const slowing = (5 / 7) * GRAVITY_MPS2 * (turf.rolling * Math.cos(slope) + way * Math.sin(slope));
    const spent = (2 * slowing * ROLL_STEP_M) / Math.cos(slope);
    if (spent >= speedSq) return done(at + way * ROLL_STEP_M * (speedSq / spent || 0), hops, 'stopped');
    speedSq -= spent;
    at += way * ROLL_STEP_M;
  }
  return done(at, hops, 'ran away');
}

/** How a run that ends at `runM` is told. */
function ending(along: GroundAlong, today: GroundToday): (runM: number, hops: number, end: RunOut['end']) => RunOut {
  const firmnessAssumed = today.firmness === undefined && !today.wet && !today.frozen;
  return (runM, hops, end) => ({ runM, surface: along(runM).surface, end, hops, firmnessAssumed });
}
