import { type ClubInBag, type PlayerFile, YARD_M } from '@leeway/engine';

interface MadeUpPlayer {
  readonly name: string;
  readonly handicapIndex: number;
  readonly clubs: readonly {
    readonly name: string;
    readonly loftDeg: number;
    readonly claimedYd?: number;
    readonly swings?: readonly string[];
  }[];
}

/** The Player file of a made-up player, before any ball is hit: bag, handicap and what is claimed. */
export function playerOf({ name, handicapIndex, clubs }: MadeUpPlayer): PlayerFile {
  const bag = clubs.map((club): ClubInBag => ({
    name: club.name,
    loftDeg: club.loftDeg,
    ...(club.claimedYd === undefined ? {} : { claimedCarryM: Number((club.claimedYd * YARD_M).toFixed(2)) }),
    ...(club.swings === undefined ? {} : { swings: club.swings }),
  }));
  return { version: 1, name, hand: 'right', handicapIndex, units: 'yd', clubs: bag };
}
