import type { BallState, Choice, HoleGround, PlanePoint } from '@leeway/engine';

/** The wind that a sheet shows: where it blows from, a bearing in degrees, and whence that is known. Less than half a unit is calm. */
export interface ShownWind {
  readonly speedMps: number;
  readonly fromDeg: number;
  readonly known: 'forecast' | 'felt' | 'measured';
}

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
  /** No choice at all: the ground from this ball to the flag, for whoever is to choose first. It goes with no choices, no shot and no strokes. */
  readonly chooseFrom?: BallState;
  /** Expected strokes for a ball at rest, as a solution gives them; no contours without it. */
  readonly strokesAtRest?: (p: PlanePoint, from: BallState) => number;
  readonly wind?: ShownWind;
  /** Leave the wind's arrow out of the rose: whoever shows the sheet draws it over, and turns it at once. */
  readonly arrowOver?: boolean;
  /** A spot of the user's own, drawn beside the choice's. */
  readonly ownSpot?: PlanePoint;
  /** Draw the second and third choice: their lines and their spots. */
  readonly alternatives?: boolean;
  /** Draw the lines that hold 50, 80 and 95 balls in 100. */
  readonly holding?: boolean;
}
