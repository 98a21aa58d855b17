import type { Ball, TwoPartFit } from '../stats/twoPart.ts';
import { fitTwoPart } from '../stats/twoPart.ts';
import { clubKey, isFullSwing, swingKey } from './club.ts';
import type { StoredFit, StoredPattern } from './file.ts';
import { carryBelief, type CarryBelief, type KnownCarry } from './ladder.ts';
import { partsOf } from './pattern.ts';
import { pooledPrior, type SpreadEvidence } from './pooled.ts';
import { spreadPrior, type Level, type SpreadPrior } from './prior.ts';

/** Balls hit with one club and swing. */
export interface SwingBalls {
  readonly club: string;
  readonly swing: string;
  readonly loftDeg?: number;
  readonly balls: readonly Ball[];
}

/** A club and swing, fitted. */
export interface SwingFit extends SwingBalls {
  readonly fit: TwoPartFit;
  /** What was believed of the carry before these balls. */
  readonly belief: CarryBelief;
}

/**
 * Fits every club and swing of a player. First each alone on the level's prior; then again on a prior that the player's other clubs have
 * moved: how far they hit the ball, how wide, how often they miss it. A club's own balls are never in its own prior, so they count once.
 */
export function fitSwings(
  level: Level,
  swings: readonly SwingBalls[],
  claims: readonly KnownCarry[],
): readonly SwingFit[] {
  const alone = swings.map((s) => fitOne(s, carryBelief(level, s, claims), spreadPrior(level, s.club, s.swing)));
  const carries = alone.map(carryEvidence);
  const spreads = alone.map(spreadEvidence);
  return swings.map((s) => {
    const others = carries.filter((c): c is KnownCarry => c !== undefined && !isSame(c, s));
    return fitOne(s, carryBelief(level, s, [...others, ...claims]), pooledPrior(level, s.club, s.swing, spreads));
  });
}

const isSame = (a: { club: string; swing: string }, b: { club: string; swing: string }): boolean =>
  clubKey(a.club) === clubKey(b.club) && swingKey(a.swing) === swingKey(b.swing);

function fitOne(s: SwingBalls, belief: CarryBelief, spread: SpreadPrior): SwingFit {
  const fit = fitTwoPart(s.balls, {
    carryM: belief.carryM,
    seCarryM: belief.carryM * belief.sdLog,
    sdCarryM: belief.carryM * spread.sdCarryShare,
    directionSdDeg: spread.directionSdDeg,
    mishitShare: spread.mishitShare,
    full: isFullSwing(s.swing),
  });
  return { ...s, fit, belief };
}

/** What the balls alone say of the carry: the posterior with the prior's precision taken off again. */
function carryEvidence(s: SwingFit): KnownCarry | undefined {
  const { value, se } = s.fit.carryM;
  const prior = 1 / (s.belief.carryM * s.belief.sdLog) ** 2;
  const balls = 1 / se ** 2 - prior;
  if (!(balls > 0.02 * prior)) return undefined;
  const carryM = (value / se ** 2 - s.belief.carryM * prior) / balls;
  if (!(carryM > 0.3 * value)) return undefined;
  const loft = s.loftDeg === undefined ? {} : { loftDeg: s.loftDeg };
  return { club: s.club, swing: s.swing, carryM, seLog: 1 / Math.sqrt(balls) / carryM, ...loft };
}

/** One degree of freedom goes to the mean. */
function spreadEvidence(s: SwingFit): SpreadEvidence {
  const { fit } = s;
  const goods = fit.mishitChances.map((m) => 1 - m);
  let good = 0;
  let carrySq = 0;
  let aimed = 0;
  let directionSq = 0;
  s.balls.forEach((ball, i) => {
    const g = goods[i] ?? 0;
    good += g;
    carrySq += g * (ball.carryM / fit.carryM.value - 1) ** 2;
    if (ball.directionDeg === undefined) return;
    aimed += g;
    directionSq += g * (ball.directionDeg - fit.directionDeg.value) ** 2;
  });
  return {
    club: s.club,
    swing: s.swing,
    balls: s.balls.length,
    mishits: s.balls.length - good,
    goodCarries: Math.max(0, good - 1),
    carryShareSq: good > 1 ? carrySq : 0,
    goodDirections: Math.max(0, aimed - 1),
    directionDegSq: aimed > 1 ? directionSq : 0,
  };
}

const round = (x: number, digits = 4): number => Number(x.toFixed(digits));

/** A fitted swing as a Player file keeps it: its figures and the normals projected from them, in the swing's own spread (no course in it). */
export function storedPattern(s: SwingFit): StoredPattern {
  const { fit } = s;
  const share = fit.mishitShare.value;
  const stored: StoredFit = {
    model: 'two-part',
    n: fit.n,
    carryM: round(fit.carryM.value),
    seCarryM: round(fit.carryM.se),
    directionDeg: round(fit.directionDeg.value),
    seDirectionDeg: round(fit.directionDeg.se),
    sdCarryM: round(fit.sdCarryM.value),
    seLogSdCarry: round(fit.sdCarryM.se),
    directionSdDeg: round(fit.directionSdDeg.value),
    seLogDirectionSd: round(fit.directionSdDeg.se),
    corr: round(fit.corr),
    mishitShare: round(share, 6),
    seMishitShare: round(fit.mishitShare.se * share * (1 - share), 6),
  };
  const components = partsOf({ ...stored, full: isFullSwing(s.swing) }).map((p) => ({
    weight: round(p.weight, 9),
    alongM: round(p.alongM),
    acrossM: round(p.acrossM),
    sdAlongM: round(p.sdAlongM),
    sdAcrossM: round(p.sdAcrossM),
    corr: round(p.corr, 6),
  }));
  return { club: s.club, swing: s.swing, components, fit: stored };
}
