import type { LieEffect, PlayerFile } from './file.ts';

/** How a lie changes a pattern played from a fairway. Spreads are as shares of the (changed) length; `mishit` multiplies their share. */
export interface Effect {
  readonly distance: number;
  readonly along: number;
  readonly across: number;
  readonly mishit: number;
}

export type HardLie = 'rough' | 'bunker' | 'recovery';

/**
 * The built-in effect of a lie. Rough and bunker (full swings from sand): set with the prior, so that a whole-round model meets published
 * scores. Recovery: our assumption, six tenths of the carry and half as much spread again.
 */
const BUILT_IN: { readonly [L in HardLie]: Effect } = {
  rough: { distance: 0.88, along: 1.7, across: 1.25, mishit: 1.25 },
  bunker: { distance: 0.75, along: 1.9, across: 1.35, mishit: 1.5 },
  recovery: { distance: 0.6, along: 1.5, across: 1.5, mishit: 1 },
};

/** A driver off the grass: our assumption, with half as many mishits again as a 3-wood has there (from .85 of the share on a tee to 1.9). */
export const DRIVER_OFF_FAIRWAY: Effect = { distance: 0.93, along: 1.2, across: 1.2, mishit: 2.2 };

/** The effect of a lie for this player: their own multipliers of carry and spreads where the file gives them. */
export function effectOf(file: PlayerFile, lie: HardLie): Effect {
  const own: LieEffect | undefined = file.lies?.[lie];
  return own === undefined
    ? BUILT_IN[lie]
    : { distance: own.distance, along: own.spread, across: own.spread, mishit: 1 };
}

/** A short shot is played to its length from any lie; only its spreads and mishits change. */
export const shortEffectOf = (file: PlayerFile, lie: HardLie): Effect => ({ ...effectOf(file, lie), distance: 1 });
