import type { Option } from '../player/option.ts';
import { TIE_STROKES, WORSE_DRAWS, worseShare, type Nudge } from './doubt.ts';
import type { ShownStroke } from './shown.ts';

/** The balls of one option that would most likely settle whether one choice is better than another. */
export interface Settling {
  readonly option: Option;
  readonly balls: number;
}

/** More balls than this are no advice. */
const MOST_BALLS = 100;
/** Balls that a pattern without any of its own is taken to be worth. */
const PRIOR_BALLS = 5;

/**
 * When a choice is a tie only because the patterns are not known well enough: the fewest balls of one of the two options after which, with the difference as it
 * is, the other would be worse in 8 of 10 common draws. Standard errors fall by the root of the balls. `undefined` where nothing within reach would.
 */
export function settling(worse: ShownStroke, better: ShownStroke): Settling | undefined {
  if (worse.strokes - better.strokes < TIE_STROKES || worseShare(worse, better) >= WORSE_DRAWS) return undefined;
  const options = [...new Set([better.priced.option, worse.priced.option])];
  const found = options.flatMap((option): Settling[] => {
    const settled = (balls: number): boolean => {
      const had = Math.max(PRIOR_BALLS, option.doubt.balls);
      const shrink = Math.sqrt(had / (had + balls));
      const surer = (nudges: readonly Nudge[]): Nudge[] =>
        nudges.map((n) =>
          n.key.startsWith(`${option.club}\n${option.swing}\n`)
            ? { ...n, strokes: n.strokes * shrink, bend: (n.bend ?? 0) * shrink * shrink }
            : n,
        );
      const [a, b] = [worse, better].map((s) => ({ strokes: s.strokes, nudges: surer(s.nudges) }));
      return worseShare(a!, b!) >= WORSE_DRAWS;
    };
    if (!settled(MOST_BALLS)) return [];
    let [few, many] = [0, MOST_BALLS];
    while (many - few > 1) {
      const middle = (few + many) >> 1;
      if (settled(middle)) many = middle;
      else few = middle;
    }
    return [{ option, balls: many }];
  });
  return found.toSorted((a, b) => a.balls - b.balls)[0];
}
