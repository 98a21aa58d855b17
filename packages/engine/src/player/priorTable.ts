/**
 * The prior of a player's swings and short game by handicap index: our own proposal, set so that a whole-round model meets published
 * scores, greens hit and awful shots by level (M. Broadie, Every Shot Counts, 2014, tables 9.16 and 9.17), and the two published
 * driver direction spreads (Broadie & Ko, Winter Simulation Conference 2009: 5.5 deg for players averaging 80, 7.9 deg for 100).
 * Distances in yards as tabled. Interpolation between levels is ours; no measured spread by club and handicap was found.
 */

/** Good 7-iron carry by index, when it is not known: men fall .92 yd a stroke, women 1.27; players of one index differ by 8 %. */
export const SEVEN_IRON_YD = { man: [149, -0.92], woman: [126.5, -1.27] } as const;
export const SD_LOG_CARRY_BY_INDEX = 0.08;
/** A club's ratio to the 7-iron differs between players by this much. */
export const SD_LOG_RATIO = 0.04;
/** An in-between swing's share of the full carry is only assumed, so its doubt is wider. */
export const SD_LOG_PART_SWING = 0.08;
/** A carry from memory: our assumption of how well it is known. */
export const SD_LOG_CLAIM = 0.06;

/** Carry over the 7-iron's by loft, degrees: ratio = a + b C7 (C7 in yards). About -1.75 % a degree. */
export const CARRY_RATIO_BY_LOFT: readonly (readonly [loftDeg: number, a: number, b: number])[] = [
  [15, 1.2, 0.0013],
  [18, 1.14, 0.0011],
  [22, 1.1, 0.0008],
  [27, 1.05, 0.00046],
  [30.5, 1.03, 0.0002],
  [34, 1, 0],
  [38, 0.93, 0],
  [42, 0.86, 0],
  [46, 0.79, 0],
  [50, 0.7, 0],
  [55, 0.61, 0],
  [60, 0.52, 0],
];
export const DRIVER_RATIO = [1.3, 0.0017] as const;

/** Multipliers of the driver's direction spread, the mid-iron's distance spread and the mid-iron's mishit share. */
export interface ClubFactors {
  readonly direction: number;
  readonly distance: number;
  readonly mishit: number;
}
export const CLUB_FACTORS = {
  driver: { direction: 1, distance: 1.05, mishit: 0.85 },
  wood3: { direction: 0.98, distance: 1.2, mishit: 1.25 },
  woodAndHybrid: { direction: 0.92, distance: 1.2, mishit: 1.25 },
  longIron: { direction: 0.82, distance: 1.15, mishit: 1.2 },
  midIron: { direction: 0.66, distance: 1, mishit: 1 },
  shortIron: { direction: 0.62, distance: 0.97, mishit: 0.92 },
  wedge: { direction: 0.6, distance: 1, mishit: 0.85 },
} as const satisfies { readonly [group: string]: ClubFactors };

/** Linear in the index: [at 0, per stroke]. Distance spreads are shares of carry. */
export const DIRECTION_SD_DEG = [4.78, 0.12] as const;
export const DISTANCE_SD_SHARE = [0.048, 0.00145] as const;
export const MISHIT_SHARE = [0.05, 0.0082] as const;
/** What the course adds: lie and judgement as a spread in quadrature, and mishits (from .05 + .0082 H to .085 + .0137 H). */
export const COURSE_DISTANCE_SD_SHARE = [0.048, 0.00114] as const;
export const COURSE_MISHIT_SHARE = [0.035, 0.0055] as const;

/** An in-between swing that is not owned yet spreads this much more in distance: our assumption. */
export const PART_SWING_SPREAD = 1.2;

/** Spread of the length of a short shot from a fairway at tour level, by length in yards, as a share of the length. */
export const SHORT_SPREAD_BY_YD: readonly (readonly [number, number])[] = [
  [3, 0.36],
  [8, 0.25],
  [10, 0.215],
  [15, 0.165],
  [20, 0.138],
  [30, 0.107],
  [40, 0.09],
  [60, 0.068],
  [90, 0.05],
];
/** Multiple of that spread, and the share of mishits, by index; -5.5 stands for the tour. */
export const SHORT_GAME_BY_INDEX: readonly (readonly [index: number, spread: number, mishitShare: number])[] = [
  [-5.5, 1, 0.01],
  [0, 0.94, 0.05],
  [5, 1.06, 0.1],
  [10, 1.12, 0.155],
  [15, 1.2, 0.205],
  [20, 1.24, 0.255],
  [25, 1.3, 0.295],
  [30, 1.4, 0.33],
];

/** Handicap assumed when none is known. */
export const ASSUMED_INDEX = 15;
