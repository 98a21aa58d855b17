import type { BallState, Choice, HoleGround, PlanePoint } from '@leeway/engine';

/** What a sheet is drawn from. */
export interface Charted {
  readonly ground: HoleGround;
  readonly course?: string;
  /** Whose map it is; it is printed on the sheet. */
  readonly attribution?: string;
  /** The shots of a plan, in order; none for the ground alone. */
  readonly choices: readonly Choice[];
  /** The sheet of this shot, by its place in `choices`; the whole hole, with the first shot on it, unless given. */
  readonly shot?: number;
  /** Expected strokes for a ball at rest, as a solution gives them; no contours without it. */
  readonly strokesAtRest?: (p: PlanePoint, from: BallState) => number;
}
