import type { Ball, CourseAdds, Unseen } from '../stats/ball.ts';
import { meanOf, sdOf, widened } from '../stats/sample.ts';
import {
  type Belief,
  beliefIn,
  type FigurePriors,
  fitOf,
  type Normal,
  type Seen,
  type TwoPartFit,
} from '../stats/twoPart.ts';
import { LOG_CARRY } from '../stats/twoPartModel.ts';
import { Bag } from './bag.ts';
import { clubKey, isFullSwing, readClub, swingKey } from './club.ts';
import type { OnCourse, StoredFit, StoredPattern } from './file.ts';
import type { KnownCarry } from './ladder.ts';
import { movedToNow, type Occasions, occasionsOf } from './occasions.ts';
import { partsOf } from './pattern.ts';
import { factorsOf, onCourseOf, type Level } from './prior.ts';

/** Balls hit with one club and swing. */
export interface SwingBalls {
  readonly club: string;
  readonly swing: string;
  readonly loftDeg?: number;
  readonly balls: readonly Ball[];
  /** Balls of which only the side that they missed on is known. */
  readonly unseen?: readonly Unseen[];
}

/** A club and swing, fitted. */
export interface SwingFit extends SwingBalls {
  readonly fit: TwoPartFit;
  /** What the rest of the bag made likely before these balls, and the peaks that the fit was found at: for taking in one more. */
  readonly priors: FigurePriors;
  readonly tops: Belief['tops'];
  /** The balls as they count: as they would have gone now, with the player's own ball. */
  readonly now: readonly Ball[];
  /** What days and kinds of ball did to the carries of the bag; absent when no ball tells its day or kind. */
  readonly occasions?: Occasions;
  /** The place of the swing among those that `occasions` was found from. */
  readonly place: number;
}

/** Times that what each swing's balls say is told to the others, and the points that a belief is weighed by on the way. */
const ROUNDS = 2;
const POINTS_ON_THE_WAY = 300;

/**
 * Fits every club and swing of a player on a prior that the player's other swings have moved, figure by figure: how far they go, how wide, how often
 * they are missed, where they start. A swing's own balls are never in its own prior, so they count once (expectation propagation: T. Minka, 2001).
 */
export function fitSwings(
  level: Level & { readonly onCourse?: OnCourse },
  swings: readonly SwingBalls[],
  claims: readonly KnownCarry[],
): readonly SwingFit[] {
  const elsewhere = claims.filter((c) => !swings.some((s) => isSame(s, c)));
  const bag = new Bag(level, [...swings, ...elsewhere]);
  for (const c of claims) {
    const own = swings.findIndex((s) => isSame(s, c));
    bag.tellCarry(own >= 0 ? own : swings.length + elsewhere.indexOf(c), c.carryM, c.seLog);
  }
  const asHit = swings.map((s) => seenOf(level, s));
  const occasions = occasionsOf(
    level,
    swings.map((s, k) => ({ ...s, ...asHit[k]! })),
  );
  const seen = occasions === undefined ? asHit : asHit.map((s) => movedToNow(s, occasions));
  const tops: (Belief['tops'] | undefined)[] = swings.map(() => undefined);
  for (let round = 0; round < ROUNDS; round++) {
    const priors = bag.priors();
    seen.forEach((s, k) => {
      if (s.balls.length === 0 && (s.unseen?.length ?? 0) === 0) return;
      const { sample, tops: found } = beliefIn(s, priors[k]!, POINTS_ON_THE_WAY, tops[k]);
      const after = priors[k]!.map((_, figure): Normal => {
        const mean = meanOf(sample, figure);
        return { mean, sd: sdOf(sample, figure, mean) };
      });
      tops[k] = found;
      bag.hear(k, priors[k]!, after);
    });
  }
  const priors = bag.priors();
  return swings.map((s, place): SwingFit =>
    fitted(s, seen[place]!, priors[place]!, tops[place], { place, ...(occasions && { occasions }) }),
  );
}

function fitted(
  s: SwingBalls,
  seen: Seen,
  priors: FigurePriors,
  from: Belief['tops'] | undefined,
  among: Pick<SwingFit, 'place' | 'occasions'>,
): SwingFit {
  const { sample, tops } = beliefIn(seen, priors, undefined, from);
  const width = among.occasions?.widths[among.place] ?? 1;
  return {
    ...s,
    fit: fitOf(seen, width > 1 ? widened(sample, LOG_CARRY, width) : sample),
    now: seen.balls,
    priors,
    tops,
    ...among,
  };
}

/**
 * A swing with one more ball, on what the other clubs made likely: for a session as it is hit. The other clubs learn of the ball when the bag is fitted again.
 */
export function withBall(level: Level & { readonly onCourse?: OnCourse }, s: SwingFit, ball: Ball): SwingFit {
  const { club, swing, loftDeg, unseen, priors, tops, place, occasions } = s;
  const balls: SwingBalls = {
    club,
    swing,
    balls: [...s.balls, ball],
    ...(loftDeg === undefined ? {} : { loftDeg }),
    ...(unseen === undefined ? {} : { unseen }),
  };
  const seen = seenOf(level, balls);
  const now = occasions === undefined ? seen : movedToNow(seen, occasions);
  return fitted(balls, now, priors, tops, { place, ...(occasions && { occasions }) });
}

/** What was seen of a swing, with what the course adds at the level. */
export function seenOf(level: Level & { readonly onCourse?: OnCourse }, s: SwingBalls): Seen {
  const adds = onCourseOf(level);
  const course: CourseAdds = {
    distanceShare: adds.distanceSdPct / 100,
    mishitShare: adds.mishitShare * factorsOf(readClub(s.club)).mishit,
  };
  const unseen = s.unseen === undefined ? {} : { unseen: s.unseen };
  return { balls: s.balls, full: isFullSwing(s.swing), course, ...unseen };
}

const isSame = (a: { club: string; swing: string }, b: { club: string; swing: string }): boolean =>
  clubKey(a.club) === clubKey(b.club) && swingKey(a.swing) === swingKey(b.swing);

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
