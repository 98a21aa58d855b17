import { normalPdf } from '../math/normal.ts';
import { mishitShape } from './mishitShape.ts';

/** Rounds of expectation and maximisation: enough to settle to a tenth of a standard error. */
const ROUNDS = 12;
/** From this many balls on, their own upper middle is a better place to start from than what was believed. */
const ENOUGH_TO_START = 5;

/** What is believed of a swing before its balls: logarithm of the good carry, its standard deviation, the spread as a share of the carry, and the mishits. */
export interface BeforeStrikes {
  readonly logCarry: number;
  readonly sdLog: number;
  readonly spread: number;
  readonly mishitShare: number;
  readonly full: boolean;
}

/** The chance of each ball that it is a good strike, by a quick fit of the carry alone (expectation and maximisation under a prior). */
export function goodChances(carriesM: readonly number[], before: BeforeStrikes): readonly number[] {
  const { sdLog, spread, mishitShare, full } = before;
  const shape = mishitShape(full);
  const sorted = carriesM.toSorted((a, b) => a - b);
  const middle = sorted[Math.floor(0.65 * sorted.length)] ?? 0;
  let logCarry = carriesM.length >= ENOUGH_TO_START && middle > 1 ? Math.log(middle) : before.logCarry;
  let chances: readonly number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const carry = Math.exp(logCarry);
    chances = carriesM.map((c) => {
      const good = ((1 - mishitShare) * normalPdf((c / carry - 1) / spread)) / spread;
      return good / (good + mishitShare * shape.density(c / carry) + 1e-12);
    });
    let precision = 1 / sdLog ** 2;
    let sum = before.logCarry * precision;
    carriesM.forEach((c, i) => {
      const weight = chances[i]! / spread ** 2;
      precision += weight;
      sum += weight * Math.log(Math.max(1, c));
    });
    logCarry = sum / precision;
  }
  return chances;
}
