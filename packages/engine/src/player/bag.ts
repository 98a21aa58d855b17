import { Field } from '../stats/field.ts';
import { SKEW_PRIOR, SD_FISHER_Z, type FigurePriors, type Normal } from '../stats/twoPart.ts';
import { BIAS, LOG_CARRY, LOG_DIRECTION, LOG_SPREAD, logitOf, LOGIT_MISHIT } from '../stats/twoPartModel.ts';
import { isFullSwing, readClub, swingKey } from './club.ts';
import { carryRatio, sevenIronPriorM, spreadPrior, type Level } from './prior.ts';

/** A club and swing of the bag. */
export interface BagSwing {
  readonly club: string;
  readonly swing: string;
  readonly loftDeg?: number;
}

/** How players of one level differ in a figure: all clubs together, neighbours by loft together, and each swing by itself. */
interface Differs {
  readonly all: number;
  readonly near: number;
  readonly own: number;
}

/**
 * Standard deviations on the figures' scales. Their squares sum to the published or assumed differences between players (carry 8 % by level and 4 % by
 * ratio, spreads 25 %, direction 2 degrees, mishits .5 in the logit); how a difference divides over the bag is our assumption.
 */
const DIFFERS: { readonly [figure: number]: Differs } = {
  [LOG_CARRY]: { all: 0.08, near: 0.015, own: 0.037 },
  [LOG_SPREAD]: { all: 0.18, near: 0.1, own: 0.14 },
  [BIAS]: { all: 1.4, near: 0.6, own: 1.28 },
  [LOG_DIRECTION]: { all: 0.2, near: 0.08, own: 0.13 },
  [LOGIT_MISHIT]: { all: 0.35, near: 0.2, own: 0.3 },
};
/** Clubs are near each other over this many degrees of loft. */
const NEAR_DEG = 12;
/** An in-between swing's share of the full carry is only assumed: off by this much for all clubs, and for one club. */
const PART_SWING = { all: 0.06, own: 0.053 };

/** Everything that is believed about the swings of a bag, figure by figure. */
export class Bag {
  private readonly fields: ReadonlyMap<number, Field>;
  private readonly level: Level;
  private readonly swings: readonly BagSwing[];

  constructor(level: Level, swings: readonly BagSwing[]) {
    this.level = level;
    this.swings = swings;
    const spreads = swings.map((s) => spreadPrior(level, s.club, s.swing));
    const field = (figure: number, means: readonly number[]): [number, Field] => [
      figure,
      new Field(means, covariance(swings, figure)),
    ];
    this.fields = new Map([
      field(LOG_CARRY, this.carryMeans(sevenIronPriorM(level))),
      field(
        LOG_SPREAD,
        spreads.map((s) => Math.log(s.sdCarryShare)),
      ),
      field(
        BIAS,
        spreads.map(() => 0),
      ),
      field(
        LOG_DIRECTION,
        spreads.map((s) => Math.log(s.directionSdDeg)),
      ),
      field(
        LOGIT_MISHIT,
        spreads.map((s) => logitOf(s.mishitShare)),
      ),
    ]);
  }

  /** Logarithms of the carries that players of this level have, when clubs go to the 7-iron as they do at a 7-iron's carry of `sevenM`. */
  private carryMeans(sevenM: number): readonly number[] {
    const prior = sevenIronPriorM(this.level);
    return this.swings.map((s) => Math.log(prior * carryRatio(s.club, s.swing, sevenM, s.loftDeg)));
  }

  /** Logarithms of the carries before a ball is hit: means, and how they vary together. */
  carries(): { readonly means: readonly number[]; readonly covariance: readonly (readonly number[])[] } {
    return { means: this.fields.get(LOG_CARRY)!.means, covariance: covariance(this.swings, LOG_CARRY) };
  }

  /** Adds a carry that is known from elsewhere. */
  tellCarry(k: number, carryM: number, sdLog: number): void {
    this.fields.get(LOG_CARRY)!.tell(k, { mean: Math.log(carryM), sd: sdLog });
  }

  /** The priors of every swing from all but its own balls. The club ratios depend a little on the 7-iron's carry, which is renewed here. */
  priors(): readonly FigurePriors[] {
    this.renewRatios();
    const by = new Map([...this.fields].map(([figure, field]) => [figure, field.withoutOwn()]));
    return this.swings.map((_, k) => {
      const of = (figure: number): Normal => by.get(figure)![k]!;
      return [
        of(LOG_CARRY),
        of(LOG_SPREAD),
        of(BIAS),
        of(LOG_DIRECTION),
        { mean: 0, sd: SD_FISHER_Z },
        of(LOGIT_MISHIT),
        SKEW_PRIOR,
      ];
    });
  }

  private renewRatios(): void {
    const field = this.fields.get(LOG_CARRY)!;
    const now = field.together();
    const longer = now.reduce((sum, { mean }, k) => sum + mean - field.means[k]!, 0) / Math.max(1, now.length);
    field.means = this.carryMeans(sevenIronPriorM(this.level) * Math.exp(longer));
  }

  /** Takes in what swing k's balls say. */
  hear(k: number, before: FigurePriors, after: readonly Normal[]): void {
    for (const [figure, field] of this.fields) field.hear(k, before[figure]!, after[figure]!);
  }
}

const loftOf = (s: BagSwing): number => s.loftDeg ?? readClub(s.club)?.loftDeg ?? 34;

function covariance(swings: readonly BagSwing[], figure: number): readonly (readonly number[])[] {
  const { all, near, own } = DIFFERS[figure]!;
  return swings.map((a, i) =>
    swings.map((b, j) => {
      let sum = all ** 2 + near ** 2 * Math.exp(-Math.abs(loftOf(a) - loftOf(b)) / NEAR_DEG);
      if (i === j) sum += own ** 2;
      if (figure === LOG_CARRY && !isFullSwing(a.swing) && swingKey(a.swing) === swingKey(b.swing))
        sum += PART_SWING.all ** 2 + (i === j ? PART_SWING.own ** 2 : 0);
      return sum;
    }),
  );
}
