import type { LadderData, Profile } from '@leeway/contract';

/** A club and swing of the ladder, and how its carry is known. */
export interface Rung {
  readonly club: string;
  readonly swing: string;
  readonly balls: number;
  readonly carryM: number;
  readonly from: 'fit' | 'belief' | 'balls' | 'claim';
  readonly seM?: number;
  readonly eightInTenM?: number;
  readonly mishitShare?: number;
  readonly claimedM?: number;
  readonly needed?: { readonly withinM: number; readonly balls: number };
}

/** Name and claimed carry of each swing in the bag. */
function claimsOf(clubs: Profile['clubs'] = []): readonly { club: string; swing: string; claimedM: number }[] {
  return clubs.flatMap(({ name: club, claimedCarryM, swings = [] }) => [
    ...(claimedCarryM === undefined ? [] : [{ club, swing: 'full', claimedM: claimedCarryM }]),
    ...swings.flatMap((swing) =>
      typeof swing === 'string' || swing.claimedCarryM === undefined
        ? []
        : [{ club, swing: swing.name, claimedM: swing.claimedCarryM }],
    ),
  ]);
}

const keyOf = ({ club, swing }: { readonly club: string; readonly swing: string }): string =>
  JSON.stringify([club.toLowerCase(), swing.toLowerCase()]);

const middle = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
};

/**
 * The ladder, the longest first: as it was fitted; balls of clubs that were not fitted yet by their middle; and claims that nothing stands beside.
 */
export function rungsOf({ fitted, balls }: LadderData, clubs: Profile['clubs']): readonly Rung[] {
  const rungs = new Map<string, Rung>();
  for (const entry of fitted?.ladder?.entries ?? []) {
    const { club, swing, n, carryM, eightInTenCarryM, mishitShare, claimedM, ballsNeeded } = entry;
    rungs.set(keyOf(entry), {
      club,
      swing,
      balls: n,
      carryM: carryM.mean,
      from: n === 0 ? 'belief' : 'fit',
      seM: carryM.se,
      eightInTenM: eightInTenCarryM,
      mishitShare: mishitShare.mean,
      ...(claimedM === undefined ? {} : { claimedM }),
      ...(ballsNeeded === null ? {} : { needed: ballsNeeded }),
    });
  }
  for (const [key, of] of Map.groupBy(balls, keyOf)) {
    const [first] = of;
    if (first === undefined || rungs.has(key)) continue;
    const { club, swing } = first;
    rungs.set(key, { club, swing, balls: of.length, carryM: middle(of.map((b) => b.carryM)), from: 'balls' });
  }
  for (const claim of claimsOf(clubs)) {
    const key = keyOf(claim);
    const { club, swing, claimedM } = claim;
    const known = rungs.get(key);
    rungs.set(
      key,
      known === undefined
        ? { club, swing, balls: 0, carryM: claimedM, from: 'claim', claimedM }
        : { ...known, claimedM },
    );
  }
  return [...rungs.values()].toSorted((a, b) => b.carryM - a.carryM);
}
