import type { Units } from '../sheet.ts';

/** One club and swing on the ladder; metres on the reference day. */
export interface Rung {
  readonly club: string;
  readonly swing: string;
  readonly full: boolean;
  /** The good strike's carry, and where it lies four times in five. */
  readonly carryM: number;
  readonly lo80M: number;
  readonly hi80M: number;
  readonly claimedM?: number;
  readonly balls: readonly { readonly carryM: number; readonly mishit: boolean }[];
}

/** A stretch that no carry reaches. */
export interface LadderGap {
  readonly fromM: number;
  readonly toM: number;
}

/** A player's carries in order, to be drawn. */
export interface Ladder {
  readonly player: string;
  readonly units: Units;
  readonly rungs: readonly Rung[];
  readonly gaps: readonly LadderGap[];
}

/** A club's row: its swings, longest first, and all its balls. */
export interface Row {
  readonly club: string;
  readonly rungs: readonly Rung[];
  readonly balls: number;
}

/** Rows by club, the club that carries furthest first. */
export function rowsOf({ rungs }: Ladder): readonly Row[] {
  const clubs = new Map<string, Rung[]>();
  for (const rung of rungs.toSorted((a, b) => b.carryM - a.carryM))
    clubs.set(rung.club, [...(clubs.get(rung.club) ?? []), rung]);
  return [...clubs].map(([club, own]) => ({
    club,
    rungs: own,
    balls: own.reduce((sum, r) => sum + r.balls.length, 0),
  }));
}

const SHORT_NAMES: { readonly [swing: string]: string } = { 'three-quarter': '¾', half: '½', quarter: '¼' };

/** A swing's name where there is little room; nothing for the full swing. */
export const shortName = ({ full, swing }: Rung): string => (full ? '' : (SHORT_NAMES[swing] ?? swing));
