import { interpolateRows } from '../math/interpolate.ts';
import { RAD_PER_DEG, YARD_M } from '../quantity/units.ts';
import { MISHIT_DIRECTION_SPREAD, SHORT_HALVES, SHORT_SHARE, THIN_PART } from '../stats/mishit.ts';
import { MISHIT_COUNT, SD_LOG_SPREAD } from '../stats/twoPart.ts';
import { readClub } from './club.ts';
import { flightOfClub } from './clubFlight.ts';
import type { ClubInBag, PlayerFile, ShortGameParameters } from './file.ts';
import { shortEffectOf } from './lieEffect.ts';
import type { NormalPart, Option, Pattern } from './option.ts';
import { fromLie } from './pattern.ts';
import { onCourseOf, shortGamePrior, spreadPrior } from './prior.ts';
import { SHORT_SPREAD_BY_YD } from './priorTable.ts';

/** Lengths of the ladder grow by a quarter, so that none is more than an eighth from a rung. */
const RATIO = 1.25;
const SHORTEST_M = 4;
const PITCH_FROM_YD = 15;

/**
 * Chips, pitches and sand shots from 4 m up to `belowM` (the shortest full swing), each by where the ball comes to rest. Chips are run
 * up with a less lofted wedge and are under 15 yd, longer ones are pitches. Lengths are whole units of the player, so names say them exactly.
 */
export function shortGameOptions(file: PlayerFile, bag: readonly ClubInBag[], belowM: number): readonly Option[] {
  const unitM = file.units === 'm' ? 1 : YARD_M;
  const unit = file.units ?? 'yd';
  const chipper = nearestLoft(bag, 50);
  const lofted = nearestLoft(bag, 56);
  if (chipper === undefined || lofted === undefined) return [];
  const level = shortGameLevel(file);
  const swung = (club: string): Pick<Option, 'club' | 'flight'> => ({ club, ...flightOfClub(file, club) });
  return rungs(unitM, belowM).flatMap((length) => {
    const lengthM = length * unitM;
    const parts = shortParts(level, lengthM);
    const kind = lengthM < PITCH_FROM_YD * YARD_M ? 'chip' : 'pitch';
    const from = (lie: 'rough' | 'bunker' | 'recovery'): Pattern => atRest(fromLie(parts, shortEffectOf(file, lie)));
    const base = { evidence: 'short game', full: false, doubt: doubtOf(level, lengthM) } as const;
    const grass = { tee: atRest(parts), fairway: atRest(parts), rough: from('rough'), recovery: from('recovery') };
    return [
      { ...base, ...swung(kind === 'chip' ? chipper : lofted), swing: `${kind} ${length} ${unit}`, byLie: grass },
      { ...base, ...swung(lofted), swing: `sand shot ${length} ${unit}`, byLie: { bunker: from('bunker') } },
    ];
  });
}

const atRest = (parts: readonly NormalPart[]): Pattern => ({ parts, rest: true });

/** Whole lengths about a quarter apart, in units of `unitM`. */
function rungs(unitM: number, belowM: number): readonly number[] {
  const lengths = new Set<number>();
  for (let m = SHORTEST_M; m < belowM; m *= RATIO) lengths.add(Math.round(m / unitM));
  return [...lengths].filter((n) => n > 0);
}

interface ShortGameLevel extends Required<ShortGameParameters> {
  /** A part shot is not surer of its length than the player's full swing, in shots longer than the tabled short game of 40 yd. */
  readonly leastSpreadShare: number;
}

function shortGameLevel(file: PlayerFile): ShortGameLevel {
  const wedge = spreadPrior(file, 'sand wedge', 'full');
  const course = onCourseOf(file);
  return {
    directionSdDeg: wedge.directionSdDeg,
    ...shortGamePrior(file),
    ...file.shortGame,
    leastSpreadShare: Math.hypot(wedge.sdCarryShare, course.distanceSdPct / 100),
  };
}

function shortParts(level: ShortGameLevel, lengthM: number): readonly NormalPart[] {
  const tabled = level.spread * interpolateRows(SHORT_SPREAD_BY_YD, lengthM / YARD_M);
  const sdShare = lengthM > 40 * YARD_M ? Math.max(tabled, level.leastSpreadShare) : tabled;
  const sideM = lengthM * level.directionSdDeg * RAD_PER_DEG;
  const part = (weight: number, mean: number, sd: number, widening: number): NormalPart => ({
    weight,
    alongM: lengthM * mean,
    acrossM: 0,
    sdAlongM: lengthM * sd,
    sdAcrossM: sideM * mean * widening,
    corr: 0,
  });
  const short = (level.mishitShare * SHORT_SHARE) / SHORT_HALVES.length;
  return [
    part(1 - level.mishitShare, 1, sdShare, 1),
    ...SHORT_HALVES.map((half) => part(short, half.mean, half.sd, MISHIT_DIRECTION_SPREAD)),
    part(level.mishitShare * (1 - SHORT_SHARE), THIN_PART.mean, THIN_PART.sd, MISHIT_DIRECTION_SPREAD),
  ];
}

/** A player is taken to know their lengths; how wide they spread differs by a quarter between players of one index. */
const doubtOf = (level: ShortGameLevel, lengthM: number): Option['doubt'] => ({
  balls: 0,
  seAlongM: 0.03 * lengthM,
  seAcrossM: 0.5 * RAD_PER_DEG * lengthM,
  seLogSdAlong: SD_LOG_SPREAD,
  seLogSdAcross: SD_LOG_SPREAD,
  seMishitShare: Math.sqrt((level.mishitShare * (1 - level.mishitShare)) / (MISHIT_COUNT + 1)),
});

/** The club whose loft is nearest; a driver only when there is nothing else. */
function nearestLoft(bag: readonly ClubInBag[], loftDeg: number): string | undefined {
  const lofts = bag.flatMap((club) => {
    const kind = readClub(club.name);
    const off = Math.abs((club.loftDeg ?? kind?.loftDeg ?? 34) - loftDeg);
    return kind?.family === 'putter' ? [] : [{ name: club.name, off: kind?.family === 'driver' ? off + 100 : off }];
  });
  return lofts.toSorted((a, b) => a.off - b.off)[0]?.name;
}
