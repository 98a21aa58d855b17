import { invertPositive } from '../math/cholesky.ts';
import type { Normal } from './twoPart.ts';

/** A normal message about one figure: precision, and precision times mean. Nought says nothing. */
interface Message {
  precision: number;
  weighted: number;
}

const SILENT: Normal = { mean: 0, sd: Infinity };

/**
 * One figure of several swings, normal together before a ball is hit: `means` and `covariance`. What each swing's balls say of it stands
 * beside as a message, and `without(k)` is the belief in swing k that rests on all the others.
 */
export class Field {
  private readonly told: readonly Message[];
  private readonly balls: readonly Message[];
  private readonly covariance: readonly (readonly number[])[];
  means: readonly number[];

  constructor(means: readonly number[], covariance: readonly (readonly number[])[]) {
    this.means = means;
    this.covariance = covariance;
    this.told = means.map(() => ({ precision: 0, weighted: 0 }));
    this.balls = means.map(() => ({ precision: 0, weighted: 0 }));
  }

  /** Adds what is known of swing k from elsewhere. */
  tell(k: number, { mean, sd }: Normal): void {
    const told = this.told[k]!;
    told.precision += 1 / sd ** 2;
    told.weighted += mean / sd ** 2;
  }

  /** The beliefs in all swings from everything but their own balls. */
  withoutOwn(): readonly Normal[] {
    return this.together().map(({ mean, sd }, k) => {
      const own = this.balls[k]!;
      const precision = Math.max(1e-9, 1 / sd ** 2 - own.precision);
      return { mean: (mean / sd ** 2 - own.weighted) / precision, sd: 1 / Math.sqrt(precision) };
    });
  }

  /** Takes from a swing's belief after its balls what the balls alone say: the belief with the one before taken off. */
  hear(k: number, before: Normal, after: Normal): void {
    const own = this.balls[k]!;
    const precision = 1 / after.sd ** 2 - 1 / before.sd ** 2;
    const spoke = precision > 1e-3 / before.sd ** 2;
    own.precision = spoke ? precision : 0;
    own.weighted = spoke ? after.mean / after.sd ** 2 - before.mean / before.sd ** 2 : 0;
  }

  /** The beliefs in all swings from everything: with K the covariance and S the root precisions, K - K S (I + S K S)^-1 S K. */
  together(): readonly Normal[] {
    const k = this.covariance;
    const precision = this.means.map((_, i) => this.told[i]!.precision + this.balls[i]!.precision);
    const root = precision.map(Math.sqrt);
    const inner = invertPositive(k.map((row, i) => row.map((v, j) => root[i]! * v * root[j]! + (i === j ? 1 : 0))));
    if (inner === undefined) return this.means.map(() => SILENT);
    const surprise = this.means.map((m, i) => this.told[i]!.weighted + this.balls[i]!.weighted - precision[i]! * m);
    const times = (rows: readonly (readonly number[])[], v: readonly number[]): number[] =>
      rows.map((row) => row.reduce((sum, x, j) => sum + x * v[j]!, 0));
    const kSurprise = times(k, surprise);
    const weighed = times(
      inner,
      kSurprise.map((v, i) => v * root[i]!),
    ).map((v, i) => v * root[i]!);
    const moved = times(k, weighed).map((v, i) => kSurprise[i]! - v);
    return this.means.map((m, i) => {
      const arm = k[i]!.map((v, j) => v * root[j]!);
      const known = times(inner, arm).reduce((sum, v, j) => sum + v * arm[j]!, 0);
      return { mean: m + moved[i]!, sd: Math.sqrt(Math.max(1e-12, k[i]![i]! - known)) };
    });
  }
}
