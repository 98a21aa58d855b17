/** One ball: carry in a straight line to its pitch, and direction to the right of the aim when it was measured. */
export interface Ball {
  readonly carryM: number;
  readonly directionDeg?: number;
  /** Standard error of the measured carry and direction; nought unless said. */
  readonly seCarryM?: number;
  readonly seDirectionDeg?: number;
  /** What the ball counts for, from 0 to 1 (an old one less than 1); 1 unless said. */
  readonly counts?: number;
  /** Hit on a course, where lie and judgement add their part. */
  readonly onCourse?: boolean;
  /** Days that it was hit before the player's newest ball; nothing when its day is not known. */
  readonly ageDays?: number;
  /** A ball of the range, which does not go as far as the player's own. */
  readonly rangeBall?: boolean;
  /** Known only because it came down in here: balls that did not are not on record. */
  readonly seenIn?: Window;
}

/** A part of the ground seen from the ball: metres of carry, and degrees to the right of the aim. */
export interface Window {
  readonly shortM: number;
  readonly longM: number;
  readonly leftDeg: number;
  readonly rightDeg: number;
}

/** A ball that left no mark in the window, and which way it missed when that was told; `away` is anywhere outside. */
export interface Unseen {
  readonly window: Window;
  readonly side: 'short' | 'long' | 'left' | 'right' | 'away';
  readonly counts?: number;
  readonly ageDays?: number;
}

/** What the course adds to the swing: a spread of length (share of the carry, in quadrature) and a share of mishits. */
export interface CourseAdds {
  readonly distanceShare: number;
  readonly mishitShare: number;
}

/** Balls side by side, for going through them many times: a direction that is not known is NaN. */
export interface PackedBalls {
  readonly n: number;
  readonly carryM: Float64Array;
  readonly directionDeg: Float64Array;
  readonly seCarryM: Float64Array;
  readonly seDirectionDeg: Float64Array;
  readonly counts: Float64Array;
  readonly onCourse: Uint8Array;
  readonly windows: readonly (Window | undefined)[];
  readonly unseen: readonly Unseen[];
}

export const packBalls = (balls: readonly Ball[], unseen: readonly Unseen[]): PackedBalls => ({
  n: balls.length,
  carryM: Float64Array.from(balls, (b) => b.carryM),
  directionDeg: Float64Array.from(balls, (b) => b.directionDeg ?? Number.NaN),
  seCarryM: Float64Array.from(balls, (b) => b.seCarryM ?? 0),
  seDirectionDeg: Float64Array.from(balls, (b) => b.seDirectionDeg ?? 0),
  counts: Float64Array.from(balls, (b) => b.counts ?? 1),
  onCourse: Uint8Array.from(balls, (b) => (b.onCourse === true ? 1 : 0)),
  windows: balls.map((b) => b.seenIn),
  unseen,
});
