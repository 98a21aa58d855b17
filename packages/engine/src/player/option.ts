import type { FlightTag } from '../flight/family.ts';
import type { Lie } from '../quantity/lies.ts';

/** One normal part of a pattern: metres forward along the aim line and to the right of it. */
export interface NormalPart {
  readonly weight: number;
  readonly alongM: number;
  readonly acrossM: number;
  readonly sdAlongM: number;
  readonly sdAcrossM: number;
  readonly corr: number;
}

/**
 * Where a stroke's ball goes: a mixture of normals whose weights sum to 1; the first part is the good strike.
 * `rest` says that the parts describe where the ball stops; otherwise they describe where it pitches, and run is added.
 */
export interface Pattern {
  readonly parts: readonly NormalPart[];
  readonly rest: boolean;
}

/** How well a pattern is known: standard errors of what moves it. All nought for a stated pattern. */
export interface PatternDoubt {
  readonly balls: number;
  /** Standard error of the good strike's mean carry and of its mean side. */
  readonly seAlongM: number;
  readonly seAcrossM: number;
  /** Standard error of the logarithm of the good strike's spreads (so 0.2 is about 20 %). */
  readonly seLogSdAlong: number;
  readonly seLogSdAcross: number;
  readonly seMishitShare: number;
}

/** Where a pattern came from: stated outright, fitted to balls, a claimed carry on the prior, the prior alone, or the short game's prior. */
export type Evidence = 'stated' | 'fitted' | 'claimed' | 'prior' | 'short game';

/** What is known of how a club's ball flies: its loft, and how high the player hits it against players of the same speed. */
export interface ClubFlight {
  readonly loftDeg: number;
  readonly tag?: FlightTag;
}

/** A club and swing that the player owns, from each lie it can be played from. */
export interface Option {
  readonly club: string;
  readonly swing: string;
  readonly evidence: Evidence;
  readonly full: boolean;
  /** When absent, a usual loft for a club of this name. */
  readonly flight?: ClubFlight;
  readonly byLie: { readonly [L in Lie]?: Pattern };
  readonly doubt: PatternDoubt;
}

/** Expected putts by distance; linear between rows, the last row held beyond, the first row held within. Distances rise. */
export interface PuttingRow {
  readonly distanceM: number;
  readonly strokes: number;
}

/** A putt: angle and rolled length are normal; it aims to stop `pastM` beyond and drops when it would stop within `captureM` beyond. */
export interface PuttingParameters {
  readonly sdAngleDeg: number;
  /** Share of the rolled length. */
  readonly sdDistance: number;
  readonly pastM: number;
  readonly captureM: number;
  /** Half the width that catches the ball's centre; the hole's radius less the ball's unless said. */
  readonly holeHalfWidthM?: number;
}

/** A player as the solver needs them. */
export interface PlayerModel {
  readonly name: string;
  readonly options: readonly Option[];
  /** In-between swings that the player does not own yet, priced under "worth learning" only. */
  readonly learnable: readonly Option[];
  readonly putting: readonly PuttingRow[];
  /** The parameters that the rows come from, where it is not a stated table: for greens whose slope is known. */
  readonly putter?: PuttingParameters;
}
