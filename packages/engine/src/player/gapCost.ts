import type { CarryEntry, CarryGap } from './carryTable.ts';
import { isFullSwing, readClub } from './club.ts';
import { LOSS_AT_ONE_SPREAD } from './enough.ts';
import type { OnCourse } from './file.ts';
import { PART_SWING_SPREAD } from './priorTable.ts';
import { runM } from './run.ts';

/** A distance left to a flag, and how often a round asks for it. */
export interface LeftToFlag {
  readonly toFlagM: number;
  readonly times: number;
}

/** A way to fill a gap: where it would carry, how wide, and what it saves a round. */
export interface WayToFill {
  readonly kind: 'soft' | 'grip down' | 'new club' | 'forced';
  readonly club: string;
  readonly carryM: number;
  readonly sdM: number;
  readonly strokesARound: number;
}

/** What a gap costs a round on the holes played, beside a rung in its middle; and the ways to fill it, the best first. */
export interface GapCost {
  readonly fromM: number;
  readonly toM: number;
  readonly asked: number;
  readonly strokesARound: number;
  readonly ways: readonly WayToFill[];
}

/** How far a club gripped down by an inch or two goes of its carry: assumed. */
const GRIPPED = 0.95;
/** A swing forced beyond its own gives at most this share more, as much wider as an in-between swing: assumed. */
const FORCED = 1.04;
/** A shot that no club fits costs no more than this: there is always a lay-up. */
const MOST_LOSS = 0.5;
const SOFT_SHARES = [0.96, 0.92, 0.88];
/** Drives are read at five places of their spread, each as likely. */
const FIFTHS = [-1.4, -0.53, 0, 0.53, 1.4];

interface Step {
  readonly plays: number;
  readonly sdM: number;
}

const stepOf = (carryM: number, sdShare: number, { distanceSdPct }: OnCourse): Step => ({
  plays: carryM + runM(carryM, 'green'),
  sdM: carryM * Math.hypot(sdShare, distanceSdPct / 100),
});
const shareOf = (e: CarryEntry): number => e.sdAlongM.mean / e.carryM.mean;

/** Distances that holes of these lengths leave to their flags: the drive, then the longest other club until the flag is in reach. */
export function leftBy(lengthsM: readonly number[], entries: readonly CarryEntry[]): readonly LeftToFlag[] {
  const byCarry = entries.filter((e) => isFullSwing(e.swing)).toSorted((a, b) => b.carryM.mean - a.carryM.mean);
  const driver = byCarry[0];
  const longest = byCarry.find((e) => readClub(e.club)?.family !== 'driver') ?? driver;
  if (driver === undefined || longest === undefined) return [];
  const total = (e: CarryEntry): number => e.allBallsMeanM + runM(e.carryM.mean, 'fairway');
  const reach = longest.carryM.mean + runM(longest.carryM.mean, 'green');
  return lengthsM.flatMap((lengthM): readonly LeftToFlag[] => {
    if (lengthM <= reach) return [{ toFlagM: lengthM, times: 1 }];
    return FIFTHS.map((z): LeftToFlag => {
      let left = Math.abs(lengthM - total(driver) - z * driver.sdAlongM.mean);
      while (left > reach) left = Math.abs(left - total(longest));
      return { toFlagM: left, times: 1 / FIFTHS.length };
    });
  });
}

/** Strokes that a shot loses when its spread grows by a factor of e: a fifth more spread costs about .07, from the same model of a green. */
const LOSS_OF_SPREAD = 0.4;

/** Strokes lost at a distance with the best of these swings, against one that fits it and spreads a tenth. */
const lossAt = (m: number, steps: readonly Step[]): number =>
  steps.reduce((least, { plays, sdM }) => {
    const wide = LOSS_OF_SPREAD * Math.log(sdM / plays / 0.1);
    return Math.min(least, LOSS_AT_ONE_SPREAD * ((m - plays) / sdM) ** 2 + wide);
  }, MOST_LOSS);

/** Each gap with what it costs a round, the dearest first. */
export function gapCosts(
  gaps: readonly CarryGap[],
  entries: readonly CarryEntry[],
  asked: readonly LeftToFlag[],
  onCourse: OnCourse,
): readonly GapCost[] {
  const steps = entries.map((e) => stepOf(e.carryM.mean, shareOf(e), onCourse));
  const at = (m: number): CarryEntry | undefined => entries.find((e) => e.carryM.mean === m);
  return gaps
    .map(({ fromM, toM }): GapCost => {
      const [lower, upper] = [at(fromM), at(toM)];
      const plays = (m: number): number => m + runM(m, 'green');
      const inside = asked.filter((a) => a.toFlagM > plays(fromM) && a.toFlagM < plays(toM));
      const saved = (step: Step): number =>
        inside.reduce(
          (sum, { toFlagM, times }) => sum + times * (lossAt(toFlagM, steps) - lossAt(toFlagM, [...steps, step])),
          0,
        );
      const middleM = (fromM + toM) / 2;
      const share = ((lower && shareOf(lower)) ?? 0.07) / 2 + ((upper && shareOf(upper)) ?? 0.07) / 2;
      const way = (kind: WayToFill['kind'], club: string, carryM: number, sdShare: number): WayToFill => ({
        kind,
        club,
        carryM,
        sdM: carryM * sdShare,
        strokesARound: saved(stepOf(carryM, sdShare, onCourse)),
      });
      const ways: WayToFill[] = [way('new club', '', middleM, share)];
      if (upper !== undefined && readClub(upper.club)?.family !== 'driver') {
        const own = shareOf(upper);
        ways.push(
          ...SOFT_SHARES.map((s) => way('soft', upper.club, s * toM, PART_SWING_SPREAD * own)),
          way('grip down', upper.club, GRIPPED * toM, own),
        );
      }
      if (lower !== undefined && isFullSwing(lower.swing))
        ways.push(way('forced', lower.club, FORCED * fromM, PART_SWING_SPREAD * shareOf(lower)));
      const best = ways
        .filter((w) => w.carryM > fromM && w.carryM < toM)
        .toSorted((a, b) => b.strokesARound - a.strokesARound);
      return {
        fromM,
        toM,
        asked: inside.reduce((sum, a) => sum + a.times, 0),
        strokesARound: Math.max(0, saved(stepOf(middleM, share, onCourse))),
        ways: best.filter((w, i) => best.findIndex((o) => o.kind === w.kind) === i),
      };
    })
    .toSorted((a, b) => b.strokesARound - a.strokesARound);
}
