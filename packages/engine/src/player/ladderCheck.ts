import { normalCdf } from '../math/normal.ts';
import type { CarryEntry } from './carryTable.ts';
import { clubKey, isFullSwing, readClub } from './club.ts';
import type { ClubInBag } from './file.ts';

/** Two clubs, by loft the stronger first, that do not stand as their lofts say. */
export interface LadderFault {
  readonly kind: 'order' | 'same carry';
  readonly stronger: string;
  readonly weaker: string;
  /** Metres that the stronger carries beyond the weaker, and the standard error of that. */
  readonly beyondM: number;
  readonly seM: number;
  /** Chance that the one with more loft carries as far or further. */
  readonly chance: number;
}

/** Two clubs nearer than this do one job. */
const SAME_M = 4 * 0.9144;
const SURE = 0.8;
const LEAST_BALLS = 5;

/**
 * Neighbours by loft among full swings of five balls or more: in the wrong order when the weaker loft carries further with a chance of 8 in 10, or of one carry when they are
 * surely within four yards. Lofts are the bag's, else those that the names usually mean.
 */
export function ladderFaults(entries: readonly CarryEntry[], bag: readonly ClubInBag[]): readonly LadderFault[] {
  const loftOf = (club: string): number | undefined =>
    bag.find((c) => clubKey(c.name) === clubKey(club))?.loftDeg ?? readClub(club)?.loftDeg;
  const full = entries
    .flatMap((e) => {
      const loftDeg = loftOf(e.club);
      return isFullSwing(e.swing) && e.n >= LEAST_BALLS && loftDeg !== undefined ? [{ e, loftDeg }] : [];
    })
    .toSorted((a, b) => a.loftDeg - b.loftDeg);
  return full.slice(1).flatMap(({ e: weaker, loftDeg }, i): readonly LadderFault[] => {
    const { e: stronger, loftDeg: less } = full[i]!;
    if (loftDeg - less < 0.5) return [];
    const beyondM = stronger.carryM.mean - weaker.carryM.mean;
    const seM = Math.hypot(stronger.carryM.se, weaker.carryM.se);
    const chance = normalCdf(-beyondM / seM);
    const within = normalCdf((SAME_M - beyondM) / seM) - normalCdf((-SAME_M - beyondM) / seM);
    const told = { stronger: stronger.club, weaker: weaker.club, beyondM, seM, chance };
    if (chance > SURE) return [{ kind: 'order', ...told }];
    return within > SURE ? [{ kind: 'same carry', ...told }] : [];
  });
}
