import type { Lie, Surface } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Day } from '../day/day.ts';
import type { Option, Pattern } from '../player/option.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { ScoreChances } from './scoreChances.ts';

/** Where the ball is, and what it is played from. */
export interface BallState {
  readonly at: PlanePoint;
  readonly lie: Lie;
}

/** One stroke to be played: an option and the bearing of its aim line, radians clockwise from north. */
export interface Stroke {
  readonly option: Option;
  readonly bearingRad: number;
}

/** A stroke with what it costs: expected strokes to hole out, this one included, the rest of the hole played best. */
export interface Candidate extends Stroke {
  readonly strokes: number;
}

/** Chances of where the ball comes to rest (for a penalty or out: the last stroke's ball). They sum to 1. */
export type Chances = {
  readonly [
    S in 'green' | 'fairway' | 'rough' | 'bunker' | 'penalty' | 'outOfBounds' | 'recovery' | 'unmapped'
  ]: number;
};

/** The good strike's mean: where it pitches and where it finishes; and the whole pattern as it flies down this line today. */
export interface Places {
  readonly lands: PlanePoint;
  readonly finishes: PlanePoint;
  readonly pattern: Pattern;
}

/** A stroke priced by dense quadrature: no lattice between the pattern and the ground. */
export interface Priced extends Candidate, Places {
  readonly chances: Chances;
  /** Chance of finishing in each mapped area, by its index in `ground.areas`; -1 is bare rough, -2 unmapped. */
  readonly areaChances: ReadonlyMap<number, number>;
  /** Expected cost (1 + strokes from there, penalties in) of the balls that finish in each of these, times their chance. */
  readonly areaCosts: ReadonlyMap<number, number>;
  /** Distance from the flag at rest, of balls in play. */
  readonly proximityMeanM: number;
  readonly proximityMedianM: number;
}

/** Where a ball is played from next, and the penalty strokes on the way there. */
export interface NextState {
  readonly state: BallState;
  readonly penaltyStrokes: number;
}

export interface SolveStatus {
  readonly states: number;
  readonly options: number;
  readonly sweeps: number;
  /** Largest change, in strokes, that states which lead to the changed ones have not been worked with since. */
  readonly residual: number;
  readonly converged: boolean;
}

/** How good an answer must be after the flag has been moved: quick enough to follow a finger, or as good as a hole solved from scratch. */
export type Grade = 'following' | 'settled';

/**
 * Expected strokes from everywhere on a hole, and the questions one asks of it. Nothing in it changes after the solve; one that belongs
 * to a study throws when it is asked for strokes after the flag has been moved.
 */
export interface HoleSolution {
  readonly ground: HoleGround;
  readonly day: Day;
  readonly status: SolveStatus;
  /** No slope of the green is known, or none counts for this player's putts. */
  readonly greenTakenAsFlat: boolean;
  /** Height of the ground, metres; nought everywhere where none is known. */
  heightAt(p: PlanePoint): number;
  /** The surface as painted. */
  surfaceAt(p: PlanePoint): Surface;
  /** Index in `ground.areas` of the topmost area; -1 on bare rough, -2 on unmapped ground. */
  areaAt(p: PlanePoint): number;
  /** More than 40 yd from anything mapped for this hole. */
  isUnmapped(p: PlanePoint): boolean;
  /**
   * Strokes still to play for a ball at rest at `p`: putts on the green, V from a lie, penalty and the cheapest relief in a penalty area,
   * stroke and distance to `from` when out, when that is cheaper, or with no legal drop. Interpolated; within about 0.01 of a query.
   */
  strokesAtRest(p: PlanePoint, from: BallState): number;
  /**
   * Where a ball that came to rest at `p` after a stroke from `from` is played from: as it lies, after the cheapest relief, or from `from` again.
   * A ball on the green is told as lying on fairway.
   */
  next(p: PlanePoint, from: BallState): NextState;
  /** The relief of Rule 19 from a state, where it is cheaper than any stroke. */
  unplayable(from: BallState): NextState | undefined;
  /** The answer from a state, all aims looked at: the best aim of each local minimum of each option, best first, within `withinStrokes` of the best. */
  best(from: BallState, withinStrokes?: number): readonly Candidate[];
  /** The best stroke of one option from a state. `undefined` if it is not available there. */
  bestOf(from: BallState, option: Option): Candidate | undefined;
  /** A stroke's expected strokes by the fast rule; for scanning. */
  strokesOf(from: BallState, stroke: Stroke): number;
  /** Where a stroke goes, without its price; `undefined` if it is not played from the lie. */
  placesOf(from: BallState, stroke: Stroke): Places | undefined;
  /** Chances of each number of strokes to hole out from a state, this stroke included, the rest of the hole played best. */
  scores(from: BallState, stroke: Stroke): ScoreChances;
  /** The stroke that is played from a state by the policy of the solve: quick, and within about 0.01 of the best. */
  playedFrom(from: BallState): Stroke | undefined;
  /** A stroke priced densely; for showing. */
  price(from: BallState, stroke: Stroke): Priced;
}
