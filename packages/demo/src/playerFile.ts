import { type ClubInBag, type PlayerFile, YARD_M } from '@leeway/engine';
import type { MadeUpPlayer } from './madeUpPlayer.ts';

/** The Player file of a made-up player, before any ball is hit: bag, handicap and what is claimed. */
export function playerOf({ name, hand, sex, handicapIndex, clubs }: MadeUpPlayer): PlayerFile {
  const bag = clubs.map((club): ClubInBag => ({
    name: club.name,
    loftDeg: club.loftDeg,
    ...(club.claimedYd === undefined ? {} : { claimedCarryM: Number((club.claimedYd * YARD_M).toFixed(2)) }),
    ...(club.swings === undefined ? {} : { swings: club.swings }),
  }));
  return { version: 1, name, hand, ...(sex === undefined ? {} : { sex }), handicapIndex, units: 'yd', clubs: bag };
}
