import type { Pattern, PlayerModel } from '../player/option.ts';
import { runM } from '../player/run.ts';
import type { Lie } from '../quantity/lies.ts';
import { cloudsOf, COARSE, FINE, type Clouds } from './cloud.ts';
import { BUNKER, FAIRWAY, PENALTY, RECOVERY, ROUGH, TEE } from './raster.ts';

/** The lies that a ball can be played from, as raster codes. */
export const LIE_CODES: { readonly [L in Lie]: number } = {
  tee: TEE,
  fairway: FAIRWAY,
  rough: ROUGH,
  bunker: BUNKER,
  recovery: RECOVERY,
  penalty: PENALTY,
};

/** Surfaces that a pitched ball runs on, in this order; it stays where it pitches in sand, in a penalty area and out of bounds. */
export const RUNS_ON = ['green', 'fairway', 'rough'] as const;

/** One stroke a player owns, from one lie, ready to be evaluated. */
export interface Weapon {
  /** Place in `player.options`. */
  readonly option: number;
  readonly pattern: Pattern;
  readonly fine: Clouds;
  readonly coarse: Clouds;
  /** Distance of the good strike's mean at rest on fairway, metres: for choosing what to try. */
  readonly reachM: number;
  /** Run of each part on each of `RUNS_ON`, metres; absent when the pattern is of rest. */
  readonly runsM?: Float64Array;
}

/** All that a player can play, by the raster code of the lie. */
export type Arsenal = ReadonlyMap<number, readonly Weapon[]>;

/**
 * Clouds stay small beside the ground where more than its mean cost is decided cloud by cloud: what a pitched ball runs on, and where
 * a wet one crossed.
 */
const WIDEST_RUNNING_M = 4;
const WIDEST_BY_WATER_M = 6;

export function weaponOf(option: number, pattern: Pattern, water: boolean): Weapon {
  const split = { ...FINE, widestM: !pattern.rest ? WIDEST_RUNNING_M : water ? WIDEST_BY_WATER_M : Infinity };
  const good = pattern.parts[0];
  const fine = cloudsOf(pattern.parts, split);
  const coarse = cloudsOf(pattern.parts, COARSE);
  const alongM = good?.alongM ?? 0;
  if (pattern.rest) return { option, pattern, fine, coarse, reachM: alongM };
  const runs = pattern.parts.flatMap((part) => RUNS_ON.map((surface) => runM(part.alongM, surface)));
  return { option, pattern, fine, coarse, reachM: alongM + runM(alongM, 'fairway'), runsM: Float64Array.from(runs) };
}

export function arsenalOf(player: PlayerModel, water: boolean): Arsenal {
  const all = new Map<number, Weapon[]>();
  for (const [lie, code] of Object.entries(LIE_CODES) as [Lie, number][]) {
    const weapons = player.options.flatMap((o, i) => {
      const pattern = o.byLie[lie];
      return pattern ? [weaponOf(i, pattern, water)] : [];
    });
    if (weapons.length > 0) all.set(code, weapons);
  }
  return all;
}
