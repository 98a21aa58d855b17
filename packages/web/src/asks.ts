import type { Placing } from '@leeway/chart';
import type { HoleDocument, ShotDocument } from '@leeway/contract';
import type { Grade, PlanePoint, Polygon, Units } from '@leeway/engine';

/** What the page may open, as the server lists it. */
export interface Shelf {
  readonly grounds: readonly ShelvedGround[];
  readonly players: readonly ShelvedPlayer[];
}
export interface ShelvedGround {
  readonly id: string;
  readonly course: string;
  readonly url: string;
  readonly holes: readonly { readonly hole: string; readonly name?: string; readonly par: number }[];
}
export interface ShelvedPlayer {
  readonly id: string;
  readonly name: string;
  readonly handicapIndex?: number;
  readonly url: string;
  /** Files of the shots that the patterns were fitted from. */
  readonly shotUrls: readonly string[];
}

/** Opens a hole for a player: the plan from the tee, settled. */
export interface OpenAsk {
  readonly ground: ShelvedGround;
  readonly hole: string;
  readonly player: ShelvedPlayer;
  readonly units: Units;
}

export interface HoleAnswer {
  readonly plan: HoleDocument;
  readonly course?: string;
  readonly attribution?: string;
  readonly flag: PlanePoint;
  /** The hole's green: a dragged flag stays on it. */
  readonly green: readonly Polygon[];
  /** Places of each shot's ball and spot in the hole's plane, in the order of `plan.shots`. */
  readonly shots: readonly { readonly ball: PlanePoint; readonly spot: PlanePoint }[];
}

/** Moves the flag. `following` answers for the shown shot alone, quickly; `settled` for the whole plan. The shown shot's ball stays where it lies. */
export interface FlagAsk {
  readonly flag: PlanePoint;
  readonly shot: number;
  readonly grade: Grade;
}
export interface ShotAnswer {
  readonly shot: number;
  readonly document: ShotDocument;
  readonly flag: PlanePoint;
  readonly spot: PlanePoint;
}

/** What a spot of the user's own costs with the cheapest option that finishes there. */
export interface SpotAsk {
  readonly shot: number;
  readonly spot: PlanePoint;
}
export interface SpotAnswer {
  readonly option: { readonly club: string; readonly swing: string };
  readonly expectedStrokes: number;
  readonly costsMore: number;
}

/**
 * The sheet of a shot (of the whole hole without one), in CSS px, without flag, spot, ball and flag line: the page draws those over it, so that
 * they move at once. A sheet stays where it is when only the flag has moved.
 */
export interface DrawAsk {
  readonly shot?: number;
  /** The small chart of the hole instead, with its shots numbered and `shot` shown as the present one. */
  readonly index?: true;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
  readonly light: 'paper' | 'sun';
  readonly units: Units;
  /** The phone's sheet: cropped to the end of the shot, larger figures. */
  readonly phone: boolean;
}
export interface Picture {
  readonly bitmap: ImageBitmap;
  readonly placing: Placing;
  readonly title: string;
  readonly description: string;
}

/** The recorded balls behind an option. */
export interface BehindAsk {
  readonly club: string;
  readonly swing: string;
}
export interface Behind {
  readonly balls: readonly {
    readonly date?: string;
    readonly carryM: number;
    readonly sideM?: number;
    readonly mishit: boolean;
  }[];
}

/** What the page asks of its worker. `undefined`: a newer question of the same kind took its place. */
export interface PlanDesk {
  open(ask: OpenAsk): Promise<HoleAnswer | undefined>;
  moveFlag(ask: FlagAsk): Promise<ShotAnswer | HoleAnswer | undefined>;
  spot(ask: SpotAsk): Promise<SpotAnswer | undefined>;
  draw(ask: DrawAsk): Promise<Picture | undefined>;
  behind(ask: BehindAsk): Promise<Behind | undefined>;
}
