import { normalCdf } from '../math/normal.ts';
import { SHORT_HALVES, SHORT_SHARE, THIN_FULL, THIN_PART } from '../stats/mishit.ts';
import type { Estimate, TwoPartFit } from '../stats/twoPart.ts';
import type { SwingFit } from './ability.ts';
import { isFullSwing, readClub } from './club.ts';
import { ballPrecision, ballsUntil } from './ballsUntil.ts';

/** A credible interval of a figure: 80 in 100. */
export interface Interval {
  readonly mean: number;
  readonly lo80: number;
  readonly hi80: number;
}

/** One club and swing in the table of carries. `carryM` is the good strike's mean. */
export interface CarryEntry {
  readonly club: string;
  readonly swing: string;
  readonly n: number;
  readonly carryM: Interval & {
    readonly se: number;
    readonly lo50: number;
    readonly hi50: number;
    readonly lo95: number;
    readonly hi95: number;
  };
  readonly sideM: { readonly mean: number; readonly se: number };
  readonly sdAlongM: Interval;
  readonly directionSdDeg: Interval;
  readonly mishitShare: Interval;
  readonly allBallsMeanM: number;
  /** The carry that eight balls in ten reach, mishits among them. */
  readonly eightInTenCarryM: number;
  readonly claimedM?: number;
  readonly ballsNeeded: { readonly withinM: number; readonly balls: number } | null;
}

/** A hole in the ladder: nothing between two neighbouring carries. */
export interface CarryGap {
  readonly fromM: number;
  readonly toM: number;
  readonly missingM: number;
  readonly ways: readonly string[];
}

/** 80 in 100, by the cuts of the belief. */
export const interval = (mean: number, { cuts }: Estimate): Interval => ({ mean, lo80: cuts[1]!, hi80: cuts[5]! });

/** Carries are asked to be known to within this, 95 in 100: two yards. */
const WITHIN_M = 2 * 0.9144;

/** The table's line of a fitted swing. */
export function carryEntry(s: SwingFit, claimedM?: number): CarryEntry {
  const { fit } = s;
  const { value: mean, se } = fit.carryM;
  const side = Math.sin((fit.directionDeg.value * Math.PI) / 180);
  return {
    club: s.club,
    swing: s.swing,
    n: fit.n,
    carryM: {
      mean,
      se,
      lo50: fit.carryM.cuts[2]!,
      hi50: fit.carryM.cuts[4]!,
      lo80: fit.carryM.cuts[1]!,
      hi80: fit.carryM.cuts[5]!,
      lo95: fit.carryM.cuts[0]!,
      hi95: fit.carryM.cuts[6]!,
    },
    sideM: { mean: mean * side, se: (mean * fit.directionDeg.se * Math.PI) / 180 },
    sdAlongM: interval(fit.sdCarryM.value, fit.sdCarryM),
    directionSdDeg: interval(fit.directionSdDeg.value, fit.directionSdDeg),
    mishitShare: interval(fit.mishitShare.value, fit.mishitShare),
    allBallsMeanM: carryParts(s).reduce((sum, p) => sum + p.weight * p.mean, 0),
    eightInTenCarryM: carryAtLeast(s, 0.8),
    ...(claimedM === undefined ? {} : { claimedM }),
    ballsNeeded: ballsNeeded(fit),
  };
}

interface CarryPart {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** The distribution of a swing's carries, as normals along the flight's own line. */
function carryParts(s: SwingFit): readonly CarryPart[] {
  const mean = s.fit.carryM.value;
  const share = s.fit.mishitShare.value;
  const thin = isFullSwing(s.swing) ? THIN_FULL : THIN_PART;
  const short = SHORT_HALVES.map((h) => ({
    weight: (share * SHORT_SHARE) / SHORT_HALVES.length,
    mean: mean * h.mean,
    sd: mean * h.sd,
  }));
  const long = { weight: share * (1 - SHORT_SHARE), mean: mean * thin.mean, sd: mean * thin.sd };
  return [{ weight: 1 - share, mean, sd: s.fit.sdCarryM.value }, ...short, long];
}

/** The carry that a share of all balls reaches, by halving to a millimetre. */
function carryAtLeast(s: SwingFit, share: number): number {
  const parts = carryParts(s);
  const reach = (m: number): number => parts.reduce((sum, p) => sum + p.weight * normalCdf((p.mean - m) / p.sd), 0);
  let lo = 0;
  let hi = 2 * s.fit.carryM.value;
  while (hi - lo > 1e-3) {
    const m = (lo + hi) / 2;
    if (reach(m) >= share) lo = m;
    else hi = m;
  }
  return (lo + hi) / 2;
}

/** How many more balls until the carry is known to within two yards, 95 in 100; `null` when it is known already. */
function ballsNeeded({ carryM, sdCarryM, mishitShare }: TwoPartFit): CarryEntry['ballsNeeded'] {
  const balls = ballsUntil(WITHIN_M, carryM.se, ballPrecision(sdCarryM.value, mishitShare.value));
  return balls === 0 ? null : { withinM: WITHIN_M, balls };
}

/** Neighbours further apart than this leave a gap: about a club and a half; woods and hybrids may be further apart. */
const GAP_M = 15 * 0.9144;
const LONG_GAP_M = 20 * 0.9144;

/** Gaps in a ladder of carries, with ways to fill each in words. */
export function carryGaps(entries: readonly CarryEntry[]): readonly CarryGap[] {
  const rungs = entries.toSorted((a, b) => a.carryM.mean - b.carryM.mean);
  return rungs.slice(1).flatMap((upper, i): readonly CarryGap[] => {
    const lower = rungs[i];
    if (lower === undefined) return [];
    const missingM = upper.carryM.mean - lower.carryM.mean;
    const family = readClub(upper.club)?.family;
    const long = family === 'driver' || family === 'wood' || family === 'hybrid';
    if (missingM <= (long ? LONG_GAP_M : GAP_M)) return [];
    return [{ fromM: lower.carryM.mean, toM: upper.carryM.mean, missingM, ways: waysBetween(lower, upper) }];
  });
}

function waysBetween(lower: CarryEntry, upper: CarryEntry): readonly string[] {
  const ways: string[] = [];
  const kind = readClub(upper.club);
  const below = readClub(lower.club);
  if (isFullSwing(upper.swing) && kind?.family !== 'driver')
    ways.push(`a three-quarter swing with the ${upper.club}, or the ${upper.club} gripped down`);
  if (kind !== undefined && below !== undefined && kind.loftDeg < below.loftDeg - 1)
    ways.push(
      `a club of about ${Math.round((kind.loftDeg + below.loftDeg) / 2)} degrees between the ${lower.club} and the ${upper.club}`,
    );
  if (!isFullSwing(lower.swing)) ways.push(`the full swing with the ${lower.club}`);
  if (ways.length === 0) ways.push(`more balls with the ${lower.club} and the ${upper.club}`);
  return ways;
}
