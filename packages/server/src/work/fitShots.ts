import { type Approach, readPlayer, type CarriesDocument, type Fault, type Read, type ShotRow } from '@leeway/contract';
import {
  carryEntry,
  carryGaps,
  claimedOf,
  fitSession,
  type PlayerFile,
  storedPattern,
  type StoredPattern,
} from '@leeway/engine';
import { groupShots, withApproaches } from '@leeway/formats';

/** What a fit gives: patterns for the next plan, and the ladder of the same fit. */
export interface FittedShots {
  readonly patterns: readonly StoredPattern[];
  readonly ladder: Pick<CarriesDocument, 'entries' | 'gaps'>;
}

/** Shots as they are kept. */
export type KeptBall = Pick<ShotRow, 'club' | 'swing' | 'carryM' | 'sideM' | 'readings'>;

/** Fits the patterns of a player's balls, and of what approaches to greens told, as `leeway carries` does. Refused: no ball with a club that carries, or more patterns than a player may have. */
export function fitShots(
  player: PlayerFile,
  balls: readonly KeptBall[],
  approaches: readonly Approach[] = [],
): Read<FittedShots> {
  const rows = balls.map((ball, i): ShotRow => ({ file: 'the store', line: i + 1, ...ball }));
  const bag = player.clubs ?? [];
  const swings = withApproaches(groupShots(rows, bag).swings, approaches, bag);
  if (swings.length === 0) return { faults: [refused('no shots', 'shots with clubs that carry')] };
  const fits = fitSession(player, swings);
  const patterns = fits.filter((s) => s.fit.n > 0).map(storedPattern);
  const { faults } = readPlayer(JSON.stringify({ version: 1, name: player.name, patterns }), 'the fit');
  if (faults.some(({ level }) => level === 'refused')) return { faults };
  const entries = fits
    .map((s) => carryEntry(s, claimedOf(player, s.club, s.swing)))
    .toSorted((a, b) => b.carryM.mean - a.carryM.mean);
  const gaps = carryGaps(entries).map((gap) => ({ ...gap, ways: [...gap.ways] }));
  return { value: { patterns, ladder: { entries, gaps } }, faults: [] };
}

const refused = (found: string, expected: string): Fault => ({
  code: 'no-shots',
  level: 'refused',
  file: 'the store',
  found,
  expected,
});
