import type { RulesInForce } from '../ground/rules.ts';
import { SURFACES } from '../quantity/lies.ts';
import { FAIRWAY, GREEN, OUT, PENALTY, RECOVERY, ROUGH, TEE } from './raster.ts';

/** What becomes of balls at rest on a surface: the shares that are played as they lie, played again from before, and lifted under a penalty. */
export interface Fate {
  readonly played: number;
  readonly replayed: number;
  readonly lifted: number;
}

const PLAYED: Fate = { played: 1, replayed: 0, lifted: 0 };
const REPLAYED: Fate = { played: 0, replayed: 1, lifted: 0 };
const LIFTED: Fate = { played: 0, replayed: 0, lifted: 1 };

/**
 * By raster code. Lifted are balls in penalty areas (Rule 17), those that no stroke of the player's can be played at (Rule 19), and under
 * E-5 balls out of bounds or lost; without E-5 these are played again (Rule 18).
 */
export function fatesOf(rules: RulesInForce, plays: (code: number) => boolean): readonly Fate[] {
  const gone = rules.e5 === true ? LIFTED : REPLAYED;
  const lost = new Map([
    [RECOVERY, rules.lost?.recovery ?? 0],
    [ROUGH, rules.lost?.rough ?? 0],
  ]);
  return SURFACES.map((_, surface) => {
    const code = surface === TEE ? FAIRWAY : surface;
    if (code === OUT) return gone;
    if (code === PENALTY) return LIFTED;
    if (code === GREEN) return PLAYED;
    if (!plays(code)) return LIFTED;
    const q = lost.get(code) ?? 0;
    return { played: 1 - q, replayed: q * gone.replayed, lifted: q * gone.lifted };
  });
}
