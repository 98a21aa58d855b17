import type { Ball, Random } from '@leeway/engine';
import type { VirtualSwing } from './virtualBag.ts';
import { virtualBalls } from './virtualBalls.ts';

/** How a made-up player's carries differ from day to day, and with balls of the range; all clubs together. */
export interface Changes {
  readonly name: string;
  /** Share of the carry gained in a year, steadily. */
  readonly perYear: number;
  /** Standard deviation of what it wanders by in a year, and of one day from another. */
  readonly wanders: number;
  readonly day: number;
  /** How far a range ball goes of the player's own; without it only the own ball is hit. */
  readonly rangeBall?: number;
}

/** Balls of each swing over sessions of `agesDays` (the oldest first, the newest nought), `each` a session, and how far the carries now go of the swings' own. */
export function virtualSessions(
  swings: readonly VirtualSwing[],
  agesDays: readonly number[],
  each: number,
  changes: Changes,
  random: Random,
): readonly (readonly Ball[])[] {
  let wandered = 0;
  let last = 0;
  // Walked back from now, where the carries are the swings' own.
  const offsets = agesDays.toReversed().map((age) => {
    wandered += changes.wanders * Math.sqrt((age - last) / 365.25) * random.normal();
    last = age;
    return wandered - (changes.perYear * age) / 365.25 + changes.day * random.normal();
  });
  offsets.reverse();
  const ball = changes.rangeBall ?? 1;
  return swings.map((swing) =>
    agesDays.flatMap((ageDays, j) =>
      virtualBalls(swing, each, random).map((b): Ball => ({
        ...b,
        carryM: b.carryM * Math.exp(offsets[j]!) * ball,
        ageDays,
        ...(changes.rangeBall === undefined ? {} : { rangeBall: true }),
      })),
    ),
  );
}
