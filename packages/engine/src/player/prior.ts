import { interpolateRows } from '../math/interpolate.ts';
import { YARD_M } from '../quantity/units.ts';
import type { OnCourse } from './file.ts';
import { carryShareOf, isFullSwing, readClub, type ClubKind } from './club.ts';
import {
  ASSUMED_INDEX,
  CARRY_RATIO_BY_LOFT,
  CLUB_FACTORS,
  COURSE_DISTANCE_SD_SHARE,
  COURSE_MISHIT_SHARE,
  DIRECTION_SD_DEG,
  DISTANCE_SD_SHARE,
  DRIVER_RATIO,
  MISHIT_SHARE,
  PART_SWING_SPREAD,
  SEVEN_IRON_YD,
  SHORT_GAME_BY_INDEX,
  type ClubFactors,
} from './priorTable.ts';

/** What is believed of a swing before a ball of it is seen: spreads as shares of carry, swing only (no lie, no judgement). */
export interface SpreadPrior {
  readonly sdCarryShare: number;
  readonly directionSdDeg: number;
  readonly mishitShare: number;
}

/** The part of a player that decides the prior. */
export interface Level {
  readonly handicapIndex?: number;
  readonly sex?: 'man' | 'woman';
}

/** The index that the prior is read at: 15 when none is known, held between -5.5 (the tour's level) and 54. */
export const handicapIndexOf = (level: Level): number =>
  Math.min(54, Math.max(-5.5, level.handicapIndex ?? ASSUMED_INDEX));

const line = ([at0, perStroke]: readonly [number, number], index: number): number => at0 + perStroke * index;

/** The prior of a club's and swing's spreads. A club of an unknown name is taken for a mid-iron. */
export function spreadPrior(level: Level, club: string, swing: string): SpreadPrior {
  const index = handicapIndexOf(level);
  const factors = factorsOf(readClub(club));
  return {
    sdCarryShare: line(DISTANCE_SD_SHARE, index) * factors.distance * (isFullSwing(swing) ? 1 : PART_SWING_SPREAD),
    directionSdDeg: line(DIRECTION_SD_DEG, index) * factors.direction,
    mishitShare: Math.max(0.004, line(MISHIT_SHARE, index) * factors.mishit),
  };
}

/** What the course adds at a level, as it is written in a Player file: per cent of carry, and a share of balls. */
export function onCoursePrior(level: Level): OnCourse {
  const index = handicapIndexOf(level);
  return {
    distanceSdPct: round3(100 * line(COURSE_DISTANCE_SD_SHARE, index)),
    mishitShare: round3(Math.max(0.004, line(COURSE_MISHIT_SHARE, index))),
  };
}

/** What the course adds for a player: as the file says, else as the level has it. */
export const onCourseOf = (file: Level & { readonly onCourse?: OnCourse }): OnCourse =>
  file.onCourse ?? onCoursePrior(file);

const round3 = (x: number): number => Math.round(x * 1000) / 1000;

/** The prior of the short game: multiple of the tour's spread of length, and share of mishits; the last level is held beyond. */
export function shortGamePrior(level: Level): { readonly spread: number; readonly mishitShare: number } {
  const index = handicapIndexOf(level);
  return {
    spread: interpolateRows(SHORT_GAME_BY_INDEX, index, 1),
    mishitShare: interpolateRows(SHORT_GAME_BY_INDEX, index, 2),
  };
}

/** The 7-iron's good carry expected at a level, metres. */
export const sevenIronPriorM = (level: Level): number => {
  const yards = line(SEVEN_IRON_YD[level.sex ?? 'man'], handicapIndexOf(level));
  return YARD_M * Math.max(45, yards);
};

/** A club's and swing's carry as a multiple of the 7-iron's (a 34-degree one), by its loft if known. */
export function carryRatio(club: string, swing: string, sevenIronM: number, loftDeg?: number): number {
  const kind = readClub(club);
  const seven = sevenIronM / YARD_M;
  const share = carryShareOf(swing);
  if (kind?.family === 'driver') return share * line(DRIVER_RATIO, seven);
  const loft = loftDeg ?? kind?.loftDeg ?? 34;
  const a = interpolateRows(CARRY_RATIO_BY_LOFT, loft, 1);
  const b = interpolateRows(CARRY_RATIO_BY_LOFT, loft, 2);
  const beyond = Math.max(0, loft - 60);
  return share * Math.max(0.2, a + b * seven - 0.018 * beyond);
}

/** The club's multipliers of the spreads and of the mishit share. */
export function factorsOf(kind: ClubKind | undefined): ClubFactors {
  if (kind === undefined) return CLUB_FACTORS.midIron;
  const number = Number(kind.key.split(' ')[1]);
  switch (kind.family) {
    case 'driver':
      return CLUB_FACTORS.driver;
    case 'wood':
      return number <= 3 ? CLUB_FACTORS.wood3 : CLUB_FACTORS.woodAndHybrid;
    case 'hybrid':
      return CLUB_FACTORS.woodAndHybrid;
    case 'iron':
      return number <= 5 ? CLUB_FACTORS.longIron : number <= 7 ? CLUB_FACTORS.midIron : CLUB_FACTORS.shortIron;
    case 'wedge':
    case 'putter':
      return CLUB_FACTORS.wedge;
  }
}
