import type { Heights } from './heights.ts';
import type { Frame } from '../geometry/frame.ts';
import type { Polygon, Ring } from '../geometry/polygon.ts';
import type { Surface } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { RulesInForce } from './rules.ts';

export type { Frame, Polygon, Ring };

/** One mapped piece of ground of a hole. */
export interface Area {
  /** The feature's id in its file, e.g. `way/123`. */
  readonly id: string;
  readonly surface: Surface;
  /** Its mapped name, if it has one ("Tolvane Creek"). */
  readonly name?: string;
  /** For a penalty area: red (`true`) gives lateral relief, yellow does not. */
  readonly red?: boolean;
  /** A penalty area that no ball is played from as it lies: water, or a no-play zone. */
  readonly barred?: boolean;
  readonly polygon: Polygon;
}

/** Something a ball should not reach: another hole's tee or green, a road, a path, a building. */
export interface Caution {
  readonly id: string;
  readonly kind: 'tee' | 'green' | 'road' | 'path' | 'building';
  readonly name?: string;
  /** A closed outline, or an open line (roads and paths). */
  readonly points: readonly PlanePoint[];
  readonly closed: boolean;
}

/** The ground of one hole, ready for the solver: where no area lies, the ground is rough. */
export interface HoleGround {
  /** `ref` of the hole line, "7". */
  readonly hole: string;
  readonly name?: string;
  /** Mapped par, or guessed from the length when the map gives none (`parGuessed`). */
  readonly par: number;
  readonly parGuessed: boolean;
  readonly frame: Frame;
  /** Where the ball starts: the first node of the hole line. */
  readonly ball: PlanePoint;
  readonly flag: PlanePoint;
  /** How the flag was found. */
  readonly flagFrom: 'given' | 'pin' | 'line end' | 'green centre';
  /** The hole line, tee first. */
  readonly line: readonly PlanePoint[];
  /** Lowest paint first; later areas cover earlier ones. Exactly one hole's green has surface `green`; other greens are fairway and a caution. */
  readonly areas: readonly Area[];
  readonly cautions: readonly Caution[];
  /** Heights of the ground; it is taken as level without them. */
  readonly heights?: Heights;
  readonly rules?: RulesInForce;
}
