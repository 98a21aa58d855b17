import { MISHIT_COUNT, SPREAD_COUNT } from '../stats/twoPart.ts';
import { clubKey, swingKey } from './club.ts';
import type { PlayerFile, StoredFit } from './file.ts';
import { spreadPrior, type Level, type SpreadPrior } from './prior.ts';

/** What balls of one club and swing say of the spreads, before any prior: sums over good strikes and mishits. */
export interface SpreadEvidence {
  readonly club: string;
  readonly swing: string;
  /** Balls, and how many of them are mishits (a sum of chances, so not whole). */
  readonly balls: number;
  readonly mishits: number;
  /** Sums of squares about the mean over the good strikes, carry as a share of its mean, and the degrees of freedom of each. */
  readonly goodCarries: number;
  readonly carryShareSq: number;
  readonly goodDirections: number;
  readonly directionDegSq: number;
}

/**
 * The prior of one club's spreads for this player: the level's, multiplied by how much wider (and worse) than the level's prior the
 * *other* clubs were, each brought to one scale by the club multipliers. A club's own balls are not in it, so they count once.
 */
function pooledPrior(level: Level, club: string, swing: string, evidence: readonly SpreadEvidence[]): SpreadPrior {
  const prior = spreadPrior(level, club, swing);
  let carries = SPREAD_COUNT;
  let carrySq = SPREAD_COUNT;
  let directions = SPREAD_COUNT;
  let directionSq = SPREAD_COUNT;
  let expectedMishits = MISHIT_COUNT * prior.mishitShare;
  let mishits = expectedMishits;
  for (const e of evidence) {
    if (clubKey(e.club) === clubKey(club) && swingKey(e.swing) === swingKey(swing)) continue;
    const theirs = spreadPrior(level, e.club, e.swing);
    carries += e.goodCarries;
    carrySq += e.carryShareSq / theirs.sdCarryShare ** 2;
    directions += e.goodDirections;
    directionSq += e.directionDegSq / theirs.directionSdDeg ** 2;
    expectedMishits += e.balls * theirs.mishitShare;
    mishits += e.mishits;
  }
  return {
    sdCarryShare: prior.sdCarryShare * Math.sqrt(carrySq / carries),
    directionSdDeg: prior.directionSdDeg * Math.sqrt(directionSq / directions),
    mishitShare: Math.min(0.7, prior.mishitShare * (mishits / expectedMishits)),
  };
}

/** The same from a stored player's fits. */
export function pooledSpread(file: PlayerFile, club: string, swing: string): SpreadPrior {
  const evidence = (file.patterns ?? []).flatMap((p) => (p.fit === undefined ? [] : [evidenceOf(p, p.fit)]));
  return pooledPrior(file, club, swing, evidence);
}

function evidenceOf(p: { readonly club: string; readonly swing: string }, fit: StoredFit): SpreadEvidence {
  const good = fit.n * (1 - fit.mishitShare);
  return {
    club: p.club,
    swing: p.swing,
    balls: fit.n,
    mishits: fit.n * fit.mishitShare,
    goodCarries: good,
    carryShareSq: good * (fit.sdCarryM / fit.carryM) ** 2,
    goodDirections: good,
    directionDegSq: good * fit.directionSdDeg ** 2,
  };
}
