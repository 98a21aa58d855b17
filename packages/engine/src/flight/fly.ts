import { RAD_PER_DEG } from '../quantity/units.ts';
import {
  BALL_MASS_KG,
  BALL_RADIUS_M,
  dragOfReynolds,
  GRAVITY_MPS2,
  heldReynolds,
  liftLostToReynolds,
  liftShare,
  spinDecayPerM,
} from './aerodynamics.ts';
import { AERO_TABLE, LAST_SPIN_FACTOR, ROWS_PER_UNIT } from './aeroTable.ts';
import { cubic, cubicFall, cubicTop } from './cubic.ts';
import { emptyFlight, type Flight, type FlightAir, type Launch } from './launch.ts';
import { logHeight } from './wind.ts';

/** The step that keeps carry and side within 0.03 m, in a 20 mph wind too; in calm air within a millimetre. */
export const STEP_S = 0.2;
/** The step of a table: carries within 0.1 m in a 20 mph wind, in half the time. */
export const COARSE_STEP_S = 0.4;

const RAD_PER_S_PER_RPM = (2 * Math.PI) / 60;
/** From here on a ball has the whole of its lift, to one part in 10^7. */
const WHOLE_LIFT = 0.06;
/** No ball that a person hits stays up so long. */
const LONGEST_S = 60;

/** One flight, in a record of its own; see `flyInto`. */
export const fly = (launch: Launch, air: FlightAir, targetHeightM = 0, stepS = STEP_S): Flight =>
  flyInto(emptyFlight(), launch, air, targetHeightM, stepS);

/**
 * Flies a ball until it comes down through `targetHeightM`, metres above where it lay, and writes the flight into `out`, which is
 * returned; the loop allocates nothing. The launch and the air must be possible ones (`day/possible.ts`).
 *
 * dv/dt = -k V C_D V_vec + k V^2 C_L l - g up, k = rho pi r^2 / 2 m, V_vec relative to the air, l along spin axis x V_vec; the axis keeps
 * its direction in space and the spin fades (Penner 2001). Classical Runge-Kutta; the landing is the root of the cubic through the last
 * step, and the step is then taken again just so long. The spin is integrated itself: its decay is linear, and differs by less than
 * 1e-8 from the exponential.
 *
 * `trace`, when given, takes time, along, height and right of every step from the first on, four numbers a step, while there is room.
 */
export function flyInto(
  out: Flight,
  launch: Launch,
  air: FlightAir,
  targetHeightM = 0,
  stepS = STEP_S,
  trace?: Float64Array,
): Flight {
  const rise = launch.launchDeg * RAD_PER_DEG;
  const turn = (launch.azimuthDeg ?? 0) * RAD_PER_DEG;
  const tilt = (launch.axisDeg ?? 0) * RAD_PER_DEG;
  const axisX = -Math.cos(tilt) * Math.sin(turn);
  const axisY = -Math.sin(tilt);
  const axisZ = Math.cos(tilt) * Math.cos(turn);
  const k = (0.5 * air.densityKgM3 * Math.PI * BALL_RADIUS_M * BALL_RADIUS_M) / BALL_MASS_KG;
  const reynoldsPerMps = ((2 * BALL_RADIUS_M * air.densityKgM3) / air.viscosityPaS) * 1e-5;
  const decay = spinDecayPerM(air.densityKgM3);
  const calm = air.tailMps === 0 && air.rightMps === 0;
  const logAtGauge = logHeight(air.windHeightM, air.roughnessM);
  const tailPerLog = air.tailMps / logAtGauge;
  const rightPerLog = air.rightMps / logAtGauge;

  let t = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  let vx = launch.speedMps * Math.cos(rise) * Math.cos(turn);
  let vy = launch.speedMps * Math.sin(rise);
  let vz = launch.speedMps * Math.cos(rise) * Math.sin(turn);
  let spin = launch.spinRpm * RAD_PER_S_PER_RPM;
  // A number for certain, so that the loop keeps it unboxed.
  let h = Math.min(stepS, LONGEST_S);
  let landing = false;
  let traced = 0;
  out.landed = false;
  out.apexM = 0;
  out.apexAtM = 0;

  for (;;) {
    if (trace !== undefined && traced + 4 <= trace.length && !landing) {
      trace[traced++] = t;
      trace[traced++] = x;
      trace[traced++] = y;
      trace[traced++] = z;
    }
    // The state of a stage, and the sums of the stages' slopes.
    let sy = y;
    let su = vx;
    let sv = vy;
    let sw = vz;
    let sq = spin;
    let dx = 0;
    let dy = 0;
    let dz = 0;
    let du = 0;
    let dv = 0;
    let dw = 0;
    let dq = 0;
    for (let stage = 0; stage < 4; stage++) {
      const log = calm ? 0 : logHeight(sy, air.roughnessM);
      const ax = su - tailPerLog * log;
      const az = sw - rightPerLog * log;
      const speedSq = ax * ax + sv * sv + az * az;
      const speed = Math.sqrt(speedSq);
      const lx = axisY * az - axisZ * sv;
      const ly = axisZ * ax - axisX * az;
      const lz = axisX * sv - axisY * ax;
      const across = Math.sqrt(lx * lx + ly * ly + lz * lz);
      const spinFactor = (BALL_RADIUS_M * sq * across) / speedSq;
      const reynolds = heldReynolds(reynoldsPerMps * speed);
      const at = Math.min(spinFactor, LAST_SPIN_FACTOR) * ROWS_PER_UNIT;
      const row = at | 0;
      const part = at - row;
      const dragSpin = AERO_TABLE[2 * row]!;
      const liftSpin = AERO_TABLE[2 * row + 1]!;
      const drag = dragOfReynolds(reynolds) + dragSpin + part * (AERO_TABLE[2 * row + 2]! - dragSpin);
      let lift = liftSpin + part * (AERO_TABLE[2 * row + 3]! - liftSpin) - liftLostToReynolds(reynolds);
      if (lift < 0) lift = 0;
      if (spinFactor < WHOLE_LIFT) lift *= liftShare(spinFactor);
      const slow = -k * speed * drag;
      const bend = across > 0 ? (k * speedSq * lift) / across : 0;
      const au = slow * ax + bend * lx;
      const av = slow * sv + bend * ly - GRAVITY_MPS2;
      const aw = slow * az + bend * lz;
      const aq = -decay * speed * sq;

      const weight = stage === 0 || stage === 3 ? 1 / 6 : 1 / 3;
      dx += weight * su;
      dy += weight * sv;
      dz += weight * sw;
      du += weight * au;
      dv += weight * av;
      dw += weight * aw;
      dq += weight * aq;
      const ahead = stage < 2 ? 0.5 * h : h;
      sy = y + ahead * sv;
      su = vx + ahead * au;
      sv = vy + ahead * av;
      sw = vz + ahead * aw;
      sq = spin + ahead * aq;
    }
    const nextY = y + h * dy;
    const nextVy = vy + h * dv;
    if (!landing) {
      let from = 0;
      if (vy > 0 && nextVy <= 0) {
        from = cubicTop(y, h * vy, nextY, h * nextVy);
        out.apexM = cubic(from, y, h * vy, nextY, h * nextVy);
        out.apexAtM = cubic(from, x, h * vx, x + h * dx, h * (vx + h * du));
      }
      if (nextVy <= 0 && out.apexM < targetHeightM) return neverThere(out);
      if (nextVy <= 0 && nextY <= targetHeightM) {
        h *= cubicFall(targetHeightM, from, y, h * vy, nextY, h * nextVy);
        landing = true;
        continue;
      }
    }
    x += h * dx;
    y = nextY;
    z += h * dz;
    vx += h * du;
    vy = nextVy;
    vz += h * dw;
    spin += h * dq;
    t += h;
    if (landing) break;
    if (!(t < LONGEST_S)) return neverThere(out);
  }
  if (trace !== undefined && traced + 4 <= trace.length) trace.set([t, x, y, z], traced);
  out.landed = true;
  out.carryM = x;
  out.sideM = z;
  out.timeS = t;
  out.alongMps = vx;
  out.upMps = vy;
  out.rightMps = vz;
  out.landingSpinRpm = spin / RAD_PER_S_PER_RPM;
  return out;
}

function neverThere(out: Flight): Flight {
  out.carryM = Number.NaN;
  out.sideM = Number.NaN;
  out.timeS = Number.NaN;
  out.alongMps = Number.NaN;
  out.upMps = Number.NaN;
  out.rightMps = Number.NaN;
  out.landingSpinRpm = Number.NaN;
  return out;
}
