import type { Surface } from '../quantity/lies.ts';
import { BALL_MASS_KG } from './aerodynamics.ts';
import type { Launch } from './launch.ts';
import type { GroundToday } from './surfaces.ts';

/** How a lie or a strike changes a clean launch, and where each figure comes from; `assumed` where no measurement was found. */
export interface LaunchEffect {
  readonly speed: number;
  readonly launchDeg: number;
  readonly spin: number;
  readonly azimuthDeg: number;
  readonly source: string;
  readonly assumed: boolean;
}

const UNCHANGED: LaunchEffect = { speed: 1, launchDeg: 0, spin: 1, azimuthDeg: 0, source: 'clean lie', assumed: false };

/** Lies that change a launch. */
export const HARD_LIES = ['flyer', 'heavy rough', 'fairway bunker', 'bare'] as const;
export type HardLie = (typeof HARD_LIES)[number];

/** A full iron from each lie against a clean one. */
export const LIE_EFFECTS: { readonly [L in HardLie]: LaunchEffect } = {
  flyer: {
    ...UNCHANGED,
    speed: 0.98,
    launchDeg: 1.5,
    spin: 0.6,
    source: 'spin as reported for light or wet rough by the rules bodies’ groove study; speed and launch assumed',
    assumed: true,
  },
  'heavy rough': { ...UNCHANGED, speed: 0.88, spin: 0.8, source: 'assumed: no measurement found', assumed: true },
  'fairway bunker': {
    ...UNCHANGED,
    speed: 0.97,
    source: 'assumed for full shots from a clean lie in sand: no measurement found',
    assumed: true,
  },
  bare: { ...UNCHANGED, source: 'taken as a clean lie: no measurement found', assumed: true },
};

/**
 * What a lie does to a launch today; nothing where the ball may be lifted and placed, which is on short grass under preferred lies.
 */
export const effectToday = (lie: HardLie, on: Surface, today: GroundToday): LaunchEffect | undefined =>
  today.preferredLies && (on === 'fairway' || on === 'tee') ? undefined : LIE_EFFECTS[lie];

/**
 * Standing on a slope. Uphill (positive) the club swings along the ground, so the slope is added to the launch: assumed whole. A ball
 * above the feet (positive) by `besideDeg` turns the face to the near side by atan(sin(besideDeg) tan(loft)): geometry of a tilted loft.
 * `nearSide` is -1 for a right-handed player (left), 1 for a left-handed one.
 */
export const slopeEffect = (upDeg: number, besideDeg: number, loftDeg: number, nearSide: -1 | 1): LaunchEffect => ({
  ...UNCHANGED,
  launchDeg: upDeg,
  azimuthDeg: (nearSide * Math.atan(Math.sin(rad(besideDeg)) * Math.tan(rad(loftDeg))) * 180) / Math.PI,
  source: 'geometry; that the whole slope goes into the launch is assumed',
  assumed: true,
});

/** A club head as a rigid body: mass, and moment of inertia about the axis that a strike turns it round. */
export interface RigidHead {
  readonly massKg: number;
  readonly toeHeelKgM2: number;
  readonly highLowKgM2: number;
}

/** A measured driver head (Proceedings 49 (2020) 47), and a usual iron head (general knowledge). */
export const DRIVER_HEAD: RigidHead = { massKg: 0.204, toeHeelKgM2: 5679e-7, highLowKgM2: 4085e-7 };
export const IRON_HEAD: RigidHead = { massKg: 0.27, toeHeelKgM2: 2600e-7, highLowKgM2: 700e-7 };

/**
 * Ball speed of an off-centre strike against a centred one: (1 + m/M) / (1 + m (1/M + d^2/I)), the two directions added. Real heads
 * flex, so towards toe and heel this is the least that is lost.
 */
export function strikeSpeedRatio(head: RigidHead, toeM: number, highM: number): number {
  const turning = toeM ** 2 / head.toeHeelKgM2 + highM ** 2 / head.highLowKgM2;
  return (1 + BALL_MASS_KG / head.massKg) / (1 + BALL_MASS_KG * (1 / head.massKg + turning));
}

/** Change of a driver's spin for each millimetre above the middle of the face at a ball speed of 70 m/s: of order 700 to 1,500 rpm at 20 mm. */
const GEAR_RPM_PER_MM = -55;
const GEAR_SPEED_MPS = 70;

/**
 * A driver struck `highM` above (below: negative) and `toeM` off the middle. Speed by the rigid head; spin by gear effect, whose size is
 * derived, not measured. The launch also rises on a high strike, and a tee 12 yd of carry higher goes with it (27 golfers, Alpenfels and
 * Christina); neither has a published size here, so the launch is left alone.
 */
export function driverStrike(launch: Launch, toeM: number, highM: number): LaunchEffect {
  const gear = GEAR_RPM_PER_MM * highM * 1000 * (launch.speedMps / GEAR_SPEED_MPS);
  return {
    ...UNCHANGED,
    speed: strikeSpeedRatio(DRIVER_HEAD, toeM, highM),
    spin: Math.max(0.2, 1 + gear / launch.spinRpm),
    source: 'rigid head of measured mass and inertia; gear effect derived',
    assumed: true,
  };
}

/** An iron struck off the middle: speed alone; the head's mass lies close behind the face, so gear effect is small. */
export const ironStrike = (toeM: number, highM: number): LaunchEffect => ({
  ...UNCHANGED,
  speed: strikeSpeedRatio(IRON_HEAD, toeM, highM),
  source: 'rigid head; mass and inertia of a usual iron, not measured',
  assumed: true,
});

/** Change of the attack angle, degrees, when the low point lies `aheadM` beyond the ball on an arc of radius `arcM`: -x / R. */
export const attackDeg = (aheadM: number, arcM = 1.6): number => ((-aheadM / arcM) * 180) / Math.PI;

/** A launch with an effect applied. */
export const withEffect = (launch: Launch, effect: LaunchEffect): Launch => ({
  ...launch,
  speedMps: launch.speedMps * effect.speed,
  launchDeg: launch.launchDeg + effect.launchDeg,
  spinRpm: launch.spinRpm * effect.spin,
  azimuthDeg: (launch.azimuthDeg ?? 0) + effect.azimuthDeg,
});

const rad = (deg: number): number => (deg * Math.PI) / 180;
