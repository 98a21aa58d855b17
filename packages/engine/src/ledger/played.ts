import type { Lie } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';

/** Where a stroke was played from. */
export interface PlayedFrom {
  readonly at: PlanePoint;
  readonly lie: Lie | 'green';
}

/** One stroke as it was played; places are of the hole's plane. */
export interface PlayedShot {
  readonly shot: number;
  readonly from: PlayedFrom;
  /** As the player's file spells them; a putt has none, and a stroke without them has no account of its choice. */
  readonly club?: string;
  readonly swing?: string;
  /** The place that the player pointed at, when it was noted. */
  readonly aim?: PlanePoint;
  /** Where the ball came to rest, or was last seen. */
  readonly finish: PlanePoint | 'holed';
  /** How it was struck, when that was noted. */
  readonly strike?: 'good' | 'mishit';
  readonly penaltyStrokes: number;
}

/** Parts of the game. Every stroke belongs to one. */
export const PARTS = ['long shot', 'short game', 'putt'] as const;
export type Part = (typeof PARTS)[number];

/** A stroke this near the flag and off the green is short game: 40 yd. */
const SHORT_GAME_M = 40 * YARD_M;

export const partOf = ({ lie }: PlayedFrom, toFlagM: number): Part =>
  lie === 'green' ? 'putt' : toFlagM <= SHORT_GAME_M ? 'short game' : 'long shot';
