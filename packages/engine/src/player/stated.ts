import { LIES, type Lie } from '../quantity/lies.ts';
import { isFullSwing, readClub } from './club.ts';
import { flightOfClub } from './clubFlight.ts';
import type { PlayerFile, StoredPattern } from './file.ts';
import { effectOf } from './lieEffect.ts';
import type { Option, Pattern, PatternDoubt } from './option.ts';
import { fromLie, tidyParts } from './pattern.ts';

const CERTAIN: PatternDoubt = {
  balls: 0,
  seAlongM: 0,
  seAcrossM: 0,
  seLogSdAlong: 0,
  seLogSdAcross: 0,
  seMishitShare: 0,
};

/**
 * The options of a stated player: exactly the stated patterns. One with a lie stands for that lie as it is, and an option with any
 * such pattern is not available from a lie it does not state; one without is for tee and fairway, and other lies change it. Where an
 * option has both kinds, the one without a lie stands for tee and fairway only.
 */
export function statedOptions(file: PlayerFile): readonly Option[] {
  const byName = new Map<string, StoredPattern[]>();
  for (const p of file.patterns ?? []) {
    const key = JSON.stringify([p.club, p.swing]);
    byName.set(key, [...(byName.get(key) ?? []), p]);
  }
  return [...byName.values()].flatMap((patterns): readonly Option[] => {
    const first = patterns[0];
    if (first === undefined) return [];
    const { club, swing } = first;
    const byLie = patterns.some((p) => p.lie !== undefined) ? statedByLie(patterns) : everyLie(file, first);
    return [
      { club, swing, evidence: 'stated', full: isFullSwing(swing), ...flightOfClub(file, club), byLie, doubt: CERTAIN },
    ];
  });
}

const patternOf = (p: StoredPattern): Pattern => ({ parts: tidyParts(p.components), rest: p.rest ?? false });

function statedByLie(patterns: readonly StoredPattern[]): { readonly [L in Lie]?: Pattern } {
  const byLie: { [L in Lie]?: Pattern } = {};
  for (const lie of LIES) {
    const stated =
      patterns.find((p) => p.lie === lie) ??
      (lie === 'tee' || lie === 'fairway' ? patterns.find((p) => p.lie === undefined) : undefined);
    if (stated !== undefined) byLie[lie] = patternOf(stated);
  }
  return byLie;
}

function everyLie(file: PlayerFile, p: StoredPattern): { readonly [L in Lie]?: Pattern } {
  const from = (lie: 'rough' | 'bunker' | 'recovery'): Pattern => ({
    parts: fromLie(tidyParts(p.components), effectOf(file, lie)),
    rest: p.rest ?? false,
  });
  const grass = { tee: patternOf(p), fairway: patternOf(p), rough: from('rough'), bunker: from('bunker') };
  return readClub(p.club)?.family === 'driver' ? grass : { ...grass, recovery: from('recovery') };
}
