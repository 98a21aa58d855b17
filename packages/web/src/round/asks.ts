import type { DayDocument, HoleDocument, RoundPart, ShelvedGround, ShelvedPlayer } from '@leeway/contract';
import type { GivenFlag, GreenZone, Units, Wind } from '@leeway/engine';

/** A flag of the day as a pin sheet has it: a part of the green, or paces on from its front and in from a side. */
export type Pin = { readonly kind: 'zone'; readonly zone: GreenZone } | Extract<GivenFlag, { readonly kind: 'paces' }>;

/** One hole of a round: planned from the tee for the day. */
export interface RoundHoleAsk {
  readonly ground: ShelvedGround;
  readonly hole: string;
  readonly player: ShelvedPlayer;
  readonly units: Units;
  readonly wind: Wind;
  /** As the map has it unless said. */
  readonly pin?: Pin;
}

export interface RoundHoleAnswer {
  /** With the chances of the score. */
  readonly plan: HoleDocument;
  /** The plan as a coach writes it. */
  readonly line: string;
  readonly part: RoundPart;
  readonly day: DayDocument;
  readonly attribution?: string;
}

/** What the round page asks of its workers. */
export interface RoundDesk {
  hole(ask: RoundHoleAsk): Promise<RoundHoleAnswer | undefined>;
}
