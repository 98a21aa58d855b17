import { BALL_RADIUS_M } from './aerodynamics.ts';
import type { Turf } from './surfaces.ts';

/** A ball at the ground: speed forward along it, speed into it (or, after a bounce, out of it), and backspin in rad/s. */
export interface Impact {
  forwardMps: number;
  normalMps: number;
  backspin: number;
}

/** Tilt of the turf under an impact of 18.6 m/s at 44.4 deg from the vertical, which the others are scaled to. */
const TILT_RAD = (15.4 * Math.PI) / 180;
const TILT_SPEED_MPS = 18.6;
const TILT_ANGLE_RAD = (44.4 * Math.PI) / 180;
/** Restitution falls with the speed of impact up to here and is level beyond. */
const FAST_IMPACT_MPS = 20;
const FAST_RESTITUTION = 0.12;

/**
 * One bounce, written into `ball` (Penner, Canadian Journal of Physics 80 (2002) 931). The impact makes turf lean against the ball by
 * 15.4 deg (V / 18.6)(phi / 44.4), phi from the vertical; in that frame it rebounds with e = .510 - .0375 n + .000903 n^2 and either grips
 * (rolls off) or slides. A ball moving backwards is the mirror image. Over 1,000 measured bounces fit this form only moderately (Biber
 * and others, Sports Engineering 26 (2023)); no simple model is good.
 */
export function bounce(ball: Impact, turf: Turf): void {
  const mirror = ball.forwardMps < 0 ? -1 : 1;
  const u = mirror * ball.forwardMps;
  const n = ball.normalMps;
  const w = mirror * ball.backspin;
  const lean = turf.tilt * TILT_RAD * (Math.hypot(u, n) / TILT_SPEED_MPS) * (Math.atan2(u, n) / TILT_ANGLE_RAD);
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  const along = u * cos - n * sin;
  const into = u * sin + n * cos;
  const e = turf.restitution * restitution(into);
  const grips = (2 * (along + BALL_RADIUS_M * w)) / (7 * (1 + e) * into) < turf.friction;
  const alongAfter = grips ? (5 / 7) * along - (2 / 7) * BALL_RADIUS_M * w : along - turf.friction * into * (1 + e);
  const backspin = grips ? -alongAfter / BALL_RADIUS_M : w - (5 * turf.friction * into * (1 + e)) / (2 * BALL_RADIUS_M);
  const out = e * into;
  ball.forwardMps = mirror * (alongAfter * cos - out * sin);
  ball.normalMps = alongAfter * sin + out * cos;
  ball.backspin = mirror * backspin;
}

const restitution = (into: number): number =>
  into <= FAST_IMPACT_MPS ? 0.51 - 0.0375 * into + 0.000903 * into * into : FAST_RESTITUTION;
