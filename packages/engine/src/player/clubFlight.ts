import { clubKey, readClub } from './club.ts';
import type { ClubInBag, PlayerFile } from './file.ts';
import type { ClubFlight } from './option.ts';

/** What a file tells of how a club's ball flies: a loft of its own or a usual one, and the tag; nothing for a name that is no club's and has no loft. */
export function clubFlight({ name, loftDeg, flight }: ClubInBag): { readonly flight?: ClubFlight } {
  const loft = loftDeg ?? readClub(name)?.loftDeg;
  if (loft === undefined) return {};
  return { flight: { loftDeg: loft, ...(flight === undefined ? {} : { tag: flight }) } };
}

/** The same for a club that only a pattern names: as the bag has it, if it does. */
export const flightOfClub = (file: PlayerFile, club: string): { readonly flight?: ClubFlight } =>
  clubFlight((file.clubs ?? []).find((c) => clubKey(c.name) === clubKey(club)) ?? { name: club });
