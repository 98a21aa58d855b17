import type { Placing, Scene, ShownWind } from '@leeway/chart';
import type { HoleDocument, PlanDocument, ShelvedGround, ShelvedPlayer, ShotDocument } from '@leeway/contract';
import type { Grade, PlanePoint, Polygon, Scores, Units, Wind } from '@leeway/engine';

/** Opens a hole for a player: the plan from the tee, settled. */
export interface OpenAsk {
  readonly ground: ShelvedGround;
  readonly hole: string;
  readonly player: ShelvedPlayer;
  readonly units: Units;
  /** Calm unless said. */
  readonly wind?: Wind;
}

export interface HoleAnswer {
  /** Worked out beforehand, and shown while the hole is being solved here; the solved one is the same. */
  readonly prepared?: true;
  readonly plan: HoleDocument;
  readonly course?: string;
  readonly attribution?: string;
  readonly flag: PlanePoint;
  /** The hole's green: a dragged flag stays on it. */
  readonly green: readonly Polygon[];
  /** Places of each shot's ball and spot in the hole's plane, in the order of `plan.shots`. */
  readonly shots: readonly { readonly ball: PlanePoint; readonly spot: PlanePoint }[];
}

/**
 * Moves the flag or turns the wind. `following` answers with a `ShotAnswer` for the shown shot alone, quickly; `settled` with a `HoleAnswer`. The balls up to the shown
 * shot's stay where they lie; the shots after it are planned on from its spot.
 */
export interface FlagAsk {
  readonly flag: PlanePoint;
  /** As it was unless said. */
  readonly wind?: Wind;
  readonly shot: number;
  readonly grade: Grade;
}
export interface ShotAnswer {
  readonly shot: number;
  readonly document: ShotDocument;
  readonly flag: PlanePoint;
  readonly spot: PlanePoint;
}

/** A club and a swing, by the names that the player's file has for them. */
export interface Option {
  readonly club: string;
  readonly swing: string;
}

/** What a spot of the user's own costs: with the option said, else the cheapest of those that finish nearest it. */
export interface SpotAsk {
  readonly shot: number;
  readonly spot: PlanePoint;
  readonly option?: Option;
}
export interface SpotAnswer {
  /** Where that option's good strike finishes: in the direction of the spot asked for, at its own distance. */
  readonly spot: PlanePoint;
  readonly option: Option;
  readonly expectedStrokes: number;
  readonly costsMore: number;
}

/** Chances of the score on the hole, played on in the best way: with the choice, and with the second and third in the order of the document. */
export interface ScoresAnswer {
  readonly choice: Scores;
  readonly others: readonly Scores[];
}

/** The plan as it stands, to be kept, with a place of its plane as one on the Earth. */
export interface KeepAsk {
  readonly place?: PlanePoint;
}
export interface KeepAnswer {
  readonly plan: PlanDocument;
  readonly place?: { readonly lon: number; readonly lat: number };
}

/**
 * The sheet of a shot (of the whole hole without one), in CSS px, without flag, spot, ball and flag line: the page draws those over it, so that
 * they move at once. A sheet stays where it is when only the flag has moved.
 */
export interface DrawAsk {
  readonly shot?: number;
  /** In the place of `shot`: the ground from this shot's ball to the flag, without any answer on it. */
  readonly unchosen?: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
  readonly light: 'paper' | 'sun';
  readonly units: Units;
  /** The phone's sheet: cropped to the end of the shot, larger figures. */
  readonly phone: boolean;
  /** The wind that is written under the rose; the page draws its arrow. */
  readonly wind?: ShownWind;
}
/** A sheet's format, and whether the hole is opened with the shot that plays to the flag. */
export type ForeseeAsk = Omit<DrawAsk, 'shot'> & { readonly atFlag: boolean };
export interface Picture {
  readonly bitmap: ImageBitmap;
  readonly placing: Placing;
  readonly rose?: Scene['rose'];
  readonly title: string;
  readonly description: string;
}

/** The recorded balls behind an option. */
export type BehindAsk = Option;
export interface Behind {
  readonly balls: readonly {
    readonly date?: string;
    readonly carryM: number;
    readonly sideM?: number;
    readonly mishit: boolean;
  }[];
}

/**
 * What the page asks of its worker. `undefined`: a newer question of the same kind took its place. Of questions of a kind only the newest waits; one that
 * is under way is finished if it is quick (`following`) and left at its next step if it is long (`settled`), so a newer one is best asked at once.
 */
export interface PlanDesk {
  open(ask: OpenAsk): Promise<HoleAnswer | undefined>;
  moveFlag(ask: FlagAsk): Promise<ShotAnswer | HoleAnswer | undefined>;
  spot(ask: SpotAsk): Promise<SpotAnswer | undefined>;
  /** What can be played from where a shot's ball lies. */
  options(ask: { readonly shot: number }): Promise<readonly Option[] | undefined>;
  /** Plays thousands of holes; `'unknown'` where it is not known how many strokes are played already. */
  scores(ask: { readonly shot: number }): Promise<ScoresAnswer | 'unknown' | undefined>;
  keep(ask: KeepAsk): Promise<KeepAnswer | undefined>;
  draw(ask: DrawAsk): Promise<Picture | undefined>;
  /** Draws the sheet of the shot that the hole is opened with before it is asked for, so that `draw` gives it at once. */
  foresee(ask: ForeseeAsk): Promise<true | undefined>;
  /** The small chart of the hole, with its shots numbered and `shot` shown as the present one. */
  drawIndex(ask: DrawAsk): Promise<Picture | undefined>;
  behind(ask: BehindAsk): Promise<Behind | undefined>;
}
