import { beliefIn, fitOf, type Seen } from '../stats/twoPart.ts';
import { seenOf, type SwingFit } from './ability.ts';
import { type Interval, interval } from './carryTable.ts';
import type { OnCourse } from './file.ts';
import type { Level } from './prior.ts';

/** A carry and how many balls it rests on. */
export interface Counted extends Interval {
  readonly n: number;
}

/** A swing's carry as its range balls alone say it, and as its balls on the course do; both on what the other clubs make likely. */
export interface Apart {
  readonly club: string;
  readonly swing: string;
  readonly rangeM: Counted;
  readonly courseM: Counted;
}

/** The swings that were hit on both. Range balls are as measured, on their day and with the ball that was hit. */
export function apartOf(level: Level & { readonly onCourse?: OnCourse }, fits: readonly SwingFit[]): readonly Apart[] {
  return fits.flatMap((s): readonly Apart[] => {
    const seen = seenOf(level, s);
    const course = seen.balls.filter((b) => b.onCourse === true);
    const range = seen.balls.filter((b) => b.onCourse !== true);
    const { unseen = [], ...rest } = seen;
    if (course.length + unseen.length === 0 || range.length === 0) return [];
    const carryM = (own: Seen, n: number): Counted => {
      const carry = fitOf(own, beliefIn(own, s.priors).sample).carryM;
      return { ...interval(carry.value, carry), n };
    };
    return [
      {
        club: s.club,
        swing: s.swing,
        rangeM: carryM({ ...rest, balls: range }, range.length),
        courseM: carryM({ ...rest, balls: course, unseen }, course.length + unseen.length),
      },
    ];
  });
}
