import { randomFrom } from '@leeway/engine';
import { expect, test } from 'vitest';
import type { Xy } from '../marks.ts';
import { distancesTo } from './distances.ts';
import { cellOf, fillRings, type PxRaster } from './fillRings.ts';
import { InkMap } from './inkMap.ts';
import { quadOf } from './quad.ts';

const RASTER: PxRaster = { left: -3, top: -2, columns: 40, rows: 30 };

/** The even-odd rule by angles summed: an implementation of its own. */
function winds(p: Xy, ring: readonly Xy[]): boolean {
  let turn = 0;
  for (const [i, b] of ring.entries()) {
    const a = ring.at(i - 1) ?? b;
    const [u, v] = [Math.atan2(a.y - p.y, a.x - p.x), Math.atan2(b.y - p.y, b.x - p.x)];
    turn += Math.atan2(Math.sin(v - u), Math.cos(v - u));
  }
  return Math.abs(turn) > Math.PI;
}

test('filled cells are those whose middles are inside an odd number of rings', () => {
  const random = randomFrom(11);
  for (let trial = 0; trial < 20; trial++) {
    const star = (cx: number, cy: number, reach: number): Xy[] =>
      Array.from({ length: 9 }, (_, i) => {
        const [turn, radius] = [(2 * Math.PI * i) / 9, reach * (0.4 + 0.6 * random.next())];
        return { x: cx + radius * Math.cos(turn), y: cy + radius * Math.sin(turn) };
      });
    const rings = [star(12, 10, 16), star(14, 11, 7)];
    const filled = new Uint8Array(RASTER.columns * RASTER.rows);
    fillRings(RASTER, rings, (first, end) => filled.fill(1, first, end));
    for (let y = -1.5; y < 28; y++) {
      for (let x = -2.5; x < 37; x++) {
        const odd = rings.filter((r) => winds({ x, y }, r)).length % 2;
        expect(filled[cellOf(RASTER, x, y)]).toBe(odd);
      }
    }
  }
});

test('distances are those of the nearest marked cell', () => {
  const random = randomFrom(5);
  const [columns, rows] = [23, 17];
  const mask = Uint8Array.from({ length: columns * rows }, () => (random.next() < 0.03 ? 1 : 0));
  const marked = [...mask.keys()].filter((i) => mask[i] === 1);
  const found = distancesTo(mask, columns, rows);
  for (let i = 0; i < found.length; i++) {
    const [x, y] = [i % columns, Math.floor(i / columns)];
    const nearest = Math.min(...marked.map((j) => Math.hypot((j % columns) - x, Math.floor(j / columns) - y)));
    expect(found[i]).toBeCloseTo(nearest, 9);
  }
  expect(new Set(distancesTo(new Uint8Array(12), 4, 3))).toEqual(new Set([Infinity]));
});

test('an ink map tells whose ink is in a box', () => {
  const map = new InkMap({ widthPx: 50, heightPx: 50 });
  map.line(
    [
      { x: 5, y: 5 },
      { x: 45, y: 25 },
    ],
    7,
  );
  const on = quadOf({ left: 20, top: 10, right: 30, bottom: 20 });
  const off = quadOf({ left: 20, top: 25, right: 30, bottom: 40 });
  expect([map.inkOf(on, 0), map.inkOf(on, 7), map.inkOf(off, 0)]).toEqual([true, false, false]);
});
