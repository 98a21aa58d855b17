import type { FlightTag } from '../flight/family.ts';
import type { Lie } from '../quantity/lies.ts';
import type { NormalPart, PuttingParameters, PuttingRow } from './option.ts';

export type { PuttingParameters };

/** A player as stored: what is known, stated or fitted. Everything that follows from it is worked out by `playerModel`. */
export interface PlayerFile {
  readonly version: 1;
  readonly name: string;
  readonly hand?: 'right' | 'left';
  /** Decides the prior of the 7-iron's carry only; men's unless said. */
  readonly sex?: 'man' | 'woman';
  readonly handicapIndex?: number;
  /** The units of the names that are made for this player (`pitch 20 yd`); every figure in the file is metric. */
  readonly units?: 'yd' | 'm';
  readonly clubs?: readonly ClubInBag[];
  readonly patterns?: readonly StoredPattern[];
  /** In place of the built-in effect of a lie: carry and spreads are multiplied. */
  readonly lies?: { readonly [L in 'rough' | 'bunker' | 'recovery']?: LieEffect };
  readonly onCourse?: OnCourse;
  readonly putting?: readonly PuttingRow[] | PuttingParameters;
  readonly shortGame?: ShortGameParameters;
}

export interface ClubInBag {
  readonly name: string;
  readonly loftDeg?: number;
  /** How high the player hits it against players of the same speed: what a coach sees without a measurement. */
  readonly flight?: FlightTag;
  /** The full swing's good carry as the player believes it. */
  readonly claimedCarryM?: number;
  /** In-between swings that the player owns; the full swing is always owned. */
  readonly swings?: readonly (string | OwnedSwing)[];
}

export interface OwnedSwing {
  readonly name: string;
  readonly claimedCarryM?: number;
}

/** A pattern of a club and swing: stated outright, or with `fit` projected from balls. */
export interface StoredPattern {
  readonly club: string;
  readonly swing: string;
  readonly lie?: Lie;
  readonly components: readonly NormalPart[];
  readonly rest?: boolean;
  readonly fit?: StoredFit;
}

/** A fitted pattern's figures and their standard errors; the good strike's unless said. */
export interface StoredFit {
  readonly model: 'two-part';
  /** Balls, mishits among them. */
  readonly n: number;
  readonly carryM: number;
  readonly seCarryM: number;
  readonly directionDeg: number;
  readonly seDirectionDeg: number;
  readonly sdCarryM: number;
  readonly seLogSdCarry: number;
  readonly directionSdDeg: number;
  readonly seLogDirectionSd: number;
  readonly corr: number;
  readonly mishitShare: number;
  readonly seMishitShare: number;
  /** Draws of the pattern from its posterior. */
  readonly draws?: readonly (readonly NormalPart[])[];
}

export interface LieEffect {
  readonly distance: number;
  readonly spread: number;
}

/**
 * What the course adds to swings measured on a range: lie and judgement as a distance spread (per cent of carry, in quadrature) and
 * more mishits. Applied to fitted and prior patterns when the options are made, never to stated ones.
 */
export interface OnCourse {
  readonly distanceSdPct: number;
  readonly mishitShare: number;
}

/** Chips, pitches and sand shots: the spread of length as a multiple of the tour's, and the share of mishits. */
export interface ShortGameParameters {
  readonly spread: number;
  readonly mishitShare: number;
  readonly directionSdDeg?: number;
}
