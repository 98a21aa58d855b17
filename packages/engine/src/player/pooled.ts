import { clubKey, swingKey } from './club.ts';
import type { PlayerFile } from './file.ts';
import { spreadPrior, type Level, type SpreadPrior } from './prior.ts';

/** What balls of one club and swing say of the spreads, before any prior: sums over good strikes and mishits. */
export interface SpreadEvidence {
  readonly club: string;
  readonly swing: string;
  /** Balls, and how many of them are mishits (a sum of chances, so not whole). */
  readonly balls: number;
  readonly mishits: number;
  /** Mean squares of the good strikes' carry and direction about their means. */
  readonly carryShareSq: number;
  readonly directionDegSq: number;
}

/** Pseudo-counts of the prior: players of one index differ by 25 % in spreads, 1 / (2 x .25^2) = 8, and by .07 at .17 in mishits. */
export const SPREAD_PSEUDO_BALLS = 8;
export const MISHIT_PSEUDO_BALLS = 26;

/**
 * The prior of one club's spreads for this player: the level's, multiplied by how much wider (and worse) than the level's prior the
 * *other* clubs were, each brought to one scale by the club multipliers. A club's own balls are not in it, so they count once.
 */
export function pooledPrior(
  level: Level,
  club: string,
  swing: string,
  evidence: readonly SpreadEvidence[],
): SpreadPrior {
  const prior = spreadPrior(level, club, swing);
  let good = SPREAD_PSEUDO_BALLS;
  let carrySq = SPREAD_PSEUDO_BALLS;
  let directionSq = SPREAD_PSEUDO_BALLS;
  let expectedMishits = MISHIT_PSEUDO_BALLS * prior.mishitShare;
  let mishits = expectedMishits;
  for (const e of evidence) {
    if (clubKey(e.club) === clubKey(club) && swingKey(e.swing) === swingKey(swing)) continue;
    const theirs = spreadPrior(level, e.club, e.swing);
    const n = e.balls - e.mishits;
    good += n;
    carrySq += (n * e.carryShareSq) / theirs.sdCarryShare ** 2;
    directionSq += (n * e.directionDegSq) / theirs.directionSdDeg ** 2;
    expectedMishits += e.balls * theirs.mishitShare;
    mishits += e.mishits;
  }
  return {
    sdCarryShare: prior.sdCarryShare * Math.sqrt(carrySq / good),
    directionSdDeg: prior.directionSdDeg * Math.sqrt(directionSq / good),
    mishitShare: Math.min(0.7, prior.mishitShare * (mishits / expectedMishits)),
  };
}

/** The same from a stored player's fits. */
export function pooledSpread(file: PlayerFile, club: string, swing: string): SpreadPrior {
  const evidence = (file.patterns ?? []).flatMap((p): readonly SpreadEvidence[] =>
    p.fit === undefined
      ? []
      : [
          {
            club: p.club,
            swing: p.swing,
            balls: p.fit.n,
            mishits: p.fit.n * p.fit.mishitShare,
            carryShareSq: (p.fit.sdCarryM / p.fit.carryM) ** 2,
            directionDegSq: p.fit.directionSdDeg ** 2,
          },
        ],
  );
  return pooledPrior(file, club, swing, evidence);
}
