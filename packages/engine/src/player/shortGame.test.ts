import { describe, expect, it } from 'vitest';
import { interpolateRows } from '../math/interpolate.ts';
import { normalQuantile } from '../math/normal.ts';
import { YARD_M } from '../quantity/units.ts';
import type { PlayerFile } from './file.ts';
import { playerModel } from './model.ts';
import type { Pattern, PuttingRow } from './option.ts';

/** Strokes to hole out from 20 yd by index: fairway, rough, sand. The published tour table plus a simulated difference of levels. */
const FROM_20_YD = [
  [0, 2.47, 2.66, 2.61],
  [10, 2.67, 2.88, 2.84],
  [20, 2.85, 3.06, 3.02],
  [30, 3.02, 3.24, 3.21],
] as const;

/** Expected strokes when the flag stands at the good strike's mean, on a green without end: one stroke and the putts. */
function strokesToHoleOut(pattern: Pattern | undefined, putting: readonly PuttingRow[]): number {
  const rows = putting.map((r) => [r.distanceM, r.strokes]);
  const flagM = pattern?.parts[0]?.alongM ?? 0;
  const n = 30;
  const z = Array.from({ length: n }, (_, i) => normalQuantile((i + 0.5) / n));
  let sum = 1;
  for (const p of pattern?.parts ?? [])
    for (const u of z)
      for (const v of z) {
        const left = Math.hypot(flagM - p.alongM - p.sdAlongM * u, p.acrossM + p.sdAcrossM * v);
        sum += (p.weight / (n * n)) * interpolateRows(rows, left);
      }
  return sum;
}

describe('the short game', () => {
  it.each(FROM_20_YD)(
    'takes the tabled strokes from 20 yd at index %d, within .2',
    (handicapIndex, fairway, rough, sand) => {
      const { options, putting } = playerModel({ version: 1, name: 'A player', handicapIndex });
      const named = (swing: string): number[] =>
        (['fairway', 'rough', 'bunker'] as const).flatMap((lie) => {
          const pattern = options.find((o) => o.swing === swing)?.byLie[lie];
          return pattern === undefined ? [] : [strokesToHoleOut(pattern, putting)];
        });
      const found = [...named('pitch 21 yd'), ...named('sand shot 21 yd')];
      expect(found).toHaveLength(3);
      [fairway, rough, sand].forEach((strokes, i) => expect(Math.abs((found[i] ?? 9) - strokes)).toBeLessThan(0.2));
    },
  );

  it('follows the parameters of the file, and the lie multipliers of the file', () => {
    const file: PlayerFile = {
      version: 1,
      name: 'A player',
      units: 'm',
      shortGame: { spread: 2, mishitShare: 0.3, directionSdDeg: 5 },
      lies: { rough: { distance: 0.5, spread: 3 } },
    };
    const chip = playerModel(file).options.find((o) => o.swing === 'chip 10 m');
    const [good] = chip?.byLie.fairway?.parts ?? [];
    expect(good?.weight).toBeCloseTo(0.7, 12);
    expect(good?.alongM).toBe(10);
    expect(good?.sdAcrossM).toBeCloseTo((10 * 5 * Math.PI) / 180, 9);
    expect(good?.sdAlongM).toBeCloseTo(
      20 *
        interpolateRows(
          [
            [10, 0.215],
            [15, 0.165],
          ],
          10 / YARD_M,
        ),
      6,
    );
    const [rough] = chip?.byLie.rough?.parts ?? [];
    expect(rough?.alongM).toBe(10);
    expect(rough?.sdAlongM).toBeCloseTo(3 * (good?.sdAlongM ?? 0), 9);
  });

  it('is played with wedges of the bag, as they are spelled, or with the most lofted club there is', () => {
    const clubsOf = (names: readonly string[]): Set<string> =>
      new Set(
        playerModel({ version: 1, name: 'A player', clubs: names.map((name) => ({ name })) })
          .options.filter((o) => o.evidence === 'short game')
          .map((o) => o.club),
      );
    expect(clubsOf(['Driver', '7i', 'Gap', '56 deg'])).toEqual(new Set(['Gap', '56 deg']));
    expect(clubsOf(['Driver', '7i', '9i'])).toEqual(new Set(['9i']));
    expect(clubsOf(['Driver', 'Putter'])).toEqual(new Set(['Driver']));
  });
});
