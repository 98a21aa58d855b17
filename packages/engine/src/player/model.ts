import { RAD_PER_DEG } from '../quantity/units.ts';
import { MISHIT_COUNT, SD_BIAS_DEG, SD_LOG_SPREAD } from '../stats/twoPart.ts';
import type { Lie } from '../quantity/lies.ts';
import { clubKey, isFullSwing, readClub, swingKey } from './club.ts';
import { clubFlight } from './clubFlight.ts';
import type { ClubInBag, PlayerFile, PuttingParameters, StoredFit, StoredPattern } from './file.ts';
import { knownCarries } from './knownCarries.ts';
import { carryBelief } from './ladder.ts';
import { DRIVER_OFF_FAIRWAY, effectOf } from './lieEffect.ts';
import type { Evidence, NormalPart, Option, Pattern, PatternDoubt, PlayerModel, PuttingRow } from './option.ts';
import { fromLie, partsOf, tidyParts, widen } from './pattern.ts';
import { factorsOf, onCourseOf } from './prior.ts';
import { puttingPrior, puttingRows } from './putting.ts';
import { pooledSpread } from './pooled.ts';
import { shortGameOptions } from './shortGame.ts';
import { statedOptions } from './stated.ts';

/** Played by a player whose file names no clubs. */
export const STANDARD_BAG: readonly ClubInBag[] = [
  'driver',
  '3-wood',
  '5-wood',
  '4-hybrid',
  '5-iron',
  '6-iron',
  '7-iron',
  '8-iron',
  '9-iron',
  'pitching wedge',
  'gap wedge',
  'sand wedge',
  'lob wedge',
].map((name) => ({ name }));

/** Balls of its own that make an in-between swing an option without the file's listing it. */
const BALLS_TO_OWN = 10;

/** A stated player: some pattern is given without a fit. Then the patterns are the whole truth. */
export const isStated = (file: PlayerFile): boolean => (file.patterns ?? []).some((p) => p.fit === undefined);

/**
 * What a player can play, from each lie. A stated player plays exactly the stated patterns. Any other plays a full swing of every club in
 * the bag (fitted, else claimed, else the prior), in-between swings that the file lists or that have ten balls, and the short game;
 * natural in-between swings that are not owned are `learnable`. Patterns that are not stated are widened from range to course.
 */
export function playerModel(file: PlayerFile): PlayerModel {
  const putting = puttingOf(file);
  if (isStated(file)) return { name: file.name, options: statedOptions(file), learnable: [], putting };
  const bag = bagOf(file);
  const swings = bag.flatMap((club) => swingsOf(file, club));
  const owned = swings.filter((s) => s.owned).map((s) => optionOf(file, s));
  const shortestM = Math.min(...owned.filter((o) => o.full).map((o) => o.byLie.fairway?.parts[0]?.alongM ?? Infinity));
  const given = file.putting ?? puttingPrior(file);
  const putter = isTable(given) ? {} : { putter: given };
  const options = [...owned, ...shortGameOptions(file, bag, Number.isFinite(shortestM) ? shortestM : 60)];
  return {
    name: file.name,
    options,
    learnable: swings.filter((s) => !s.owned).map((s) => optionOf(file, s)),
    putting,
    ...putter,
  };
}

/** The clubs that are swung: the file's without its putter, and clubs that only a fitted pattern names; the standard bag if there are none. */
export function bagOf(file: PlayerFile): readonly ClubInBag[] {
  const bag = (file.clubs ?? []).filter((c) => readClub(c.name)?.family !== 'putter');
  const keys = new Set(bag.map((c) => clubKey(c.name)));
  const more: ClubInBag[] = [];
  for (const { club } of file.patterns ?? []) {
    if (keys.has(clubKey(club))) continue;
    keys.add(clubKey(club));
    more.push({ name: club });
  }
  const all = [...bag, ...more];
  return all.length > 0 ? all : STANDARD_BAG;
}

function puttingOf(file: PlayerFile): readonly PuttingRow[] {
  const given = file.putting;
  if (given === undefined) return puttingRows(puttingPrior(file));
  return isTable(given) ? given : puttingRows(given);
}

const isTable = (given: readonly PuttingRow[] | PuttingParameters): given is readonly PuttingRow[] =>
  Array.isArray(given);

interface ClubSwing {
  readonly club: ClubInBag;
  readonly swing: string;
  readonly owned: boolean;
  readonly claimedCarryM?: number;
  readonly fitted?: StoredPattern;
}

/** A club's swings: full, those listed, those with balls, and (not owned) the natural in-between ones. */
function swingsOf(file: PlayerFile, club: ClubInBag): readonly ClubSwing[] {
  const found = new Map<string, ClubSwing>();
  const fittedOf = (key: string): StoredPattern | undefined =>
    (file.patterns ?? []).find((p) => clubKey(p.club) === clubKey(club.name) && swingKey(p.swing) === key);
  const add = (swing: string, owned: boolean, claimedCarryM?: number): void => {
    const key = swingKey(swing);
    if (found.has(key)) return;
    const fitted = fittedOf(key);
    const claim = claimedCarryM === undefined ? {} : { claimedCarryM };
    found.set(key, { club, swing, owned, ...claim, ...(fitted === undefined ? {} : { fitted }) });
  };
  for (const listed of club.swings ?? []) {
    const swing = typeof listed === 'string' ? { name: listed } : listed;
    add(swing.name, true, swing.claimedCarryM ?? (isFullSwing(swing.name) ? club.claimedCarryM : undefined));
  }
  add(fittedOf('full')?.swing ?? 'full', true, club.claimedCarryM);
  for (const p of file.patterns ?? [])
    if (clubKey(p.club) === clubKey(club.name)) add(p.swing, (p.fit?.n ?? 0) >= BALLS_TO_OWN);
  const family = readClub(club.name)?.family;
  if (family === 'iron' || family === 'wedge') add('three-quarter', false);
  if (family === 'wedge') add('half', false);
  return [...found.values()];
}

function optionOf(file: PlayerFile, s: ClubSwing): Option {
  const { parts, doubt, evidence } = s.fitted?.fit ? fromFit(s.fitted, s.fitted.fit) : believed(file, s);
  const course = onCourseOf(file);
  const factors = factorsOf(readClub(s.club.name));
  const played = widen(parts, course.distanceSdPct / 100, course.mishitShare * factors.mishit);
  const name = s.fitted === undefined ? s.club.name : spelling(file, s.club, s.fitted);
  return {
    club: name,
    swing: s.swing,
    evidence,
    full: isFullSwing(s.swing),
    ...clubFlight(s.club),
    byLie: byLie(file, s.club, played),
    doubt,
  };
}

/** The bag's spelling wins over that of the balls. */
const spelling = (file: PlayerFile, club: ClubInBag, fitted: StoredPattern): string =>
  (file.clubs ?? []).includes(club) ? club.name : fitted.club;

interface Basis {
  readonly parts: readonly NormalPart[];
  readonly doubt: PatternDoubt;
  readonly evidence: Evidence;
}

const fromFit = (pattern: StoredPattern, fit: StoredFit): Basis => ({
  parts: tidyParts(pattern.components),
  evidence: 'fitted',
  doubt: {
    balls: fit.n,
    seAlongM: fit.seCarryM,
    seAcrossM: fit.carryM * fit.seDirectionDeg * RAD_PER_DEG,
    seLogSdAlong: fit.seLogSdCarry,
    seLogSdAcross: fit.seLogDirectionSd,
    seMishitShare: fit.seMishitShare,
  },
});

/** A swing without balls: the claimed carry or the ladder's belief, spreads from the prior moved by what the other clubs showed. */
function believed(file: PlayerFile, s: ClubSwing): Basis {
  const loft = s.club.loftDeg === undefined ? {} : { loftDeg: s.club.loftDeg };
  const belief = carryBelief(file, { club: s.club.name, swing: s.swing, ...loft }, knownCarries(file));
  const carryM = s.claimedCarryM ?? belief.carryM;
  const spread = pooledSpread(file, s.club.name, s.swing);
  const { mishitShare } = spread;
  return {
    parts: partsOf({
      carryM,
      sdCarryM: spread.sdCarryShare * carryM,
      directionDeg: 0,
      directionSdDeg: spread.directionSdDeg,
      corr: 0,
      mishitShare,
      full: isFullSwing(s.swing),
    }),
    evidence: s.claimedCarryM === undefined ? 'prior' : 'claimed',
    doubt: {
      balls: 0,
      seAlongM: belief.sdLog * carryM,
      seAcrossM: SD_BIAS_DEG * RAD_PER_DEG * carryM,
      seLogSdAlong: SD_LOG_SPREAD,
      seLogSdAcross: SD_LOG_SPREAD,
      seMishitShare: Math.sqrt((mishitShare * (1 - mishitShare)) / (MISHIT_COUNT + 1)),
    },
  };
}

/** The lies a swing can be played from. A driver is for the tee, and a gamble off the fairway; nowhere else. */
function byLie(file: PlayerFile, club: ClubInBag, parts: readonly NormalPart[]): { readonly [L in Lie]?: Pattern } {
  const pitch = (p: readonly NormalPart[]): Pattern => ({ parts: p, rest: false });
  if (readClub(club.name)?.family === 'driver')
    return { tee: pitch(parts), fairway: pitch(fromLie(parts, DRIVER_OFF_FAIRWAY)) };
  return {
    tee: pitch(parts),
    fairway: pitch(parts),
    rough: pitch(fromLie(parts, effectOf(file, 'rough'))),
    bunker: pitch(fromLie(parts, effectOf(file, 'bunker'))),
    recovery: pitch(fromLie(parts, effectOf(file, 'recovery'))),
  };
}
