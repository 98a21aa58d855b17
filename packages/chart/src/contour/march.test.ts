import { describe, expect, test } from 'vitest';
import type { Grid } from './lieGrid.ts';
import { march } from './march.ts';

const GRID: Grid = { columns: 41, rows: 41, left: -20, top: -20, stepPx: 1 };
const valuesOf = (f: (x: number, y: number) => number): Float64Array =>
  Float64Array.from({ length: 41 * 41 }, (_, i) => f((i % 41) - 20, Math.floor(i / 41) - 20));

describe('march', () => {
  test('finds each level of a cone as one closed ring, as far from its top as the level says', () => {
    const cone = valuesOf((x, y) => 20 - Math.hypot(x, y));
    const found = march(cone, GRID, [5.5, 10.5, 15.5]);
    for (const { level, lines } of found) {
      expect(lines).toHaveLength(1);
      const [ring = []] = lines;
      expect(ring.at(-1)).toEqual(ring[0]);
      for (const { x, y } of ring) expect(Math.abs(Math.hypot(x, y) - (20 - level))).toBeLessThan(0.03);
    }
  });

  test('crosses a plane exactly, from edge to edge', () => {
    const [found] = march(
      valuesOf((x, y) => x + 0.25 * y),
      GRID,
      [3.125],
    );
    expect(found?.lines).toHaveLength(1);
    const line = found?.lines[0] ?? [];
    for (const { x, y } of line) expect(x + 0.25 * y).toBeCloseTo(3.125, 12);
    expect(Math.abs((line[0]?.y ?? 0) - (line.at(-1)?.y ?? 0))).toBeCloseTo(40, 9);
  });

  test('joins the two corners of a saddle that its middle belongs to', () => {
    const grid: Grid = { columns: 2, rows: 2, left: 0, top: 0, stepPx: 1 };
    const lines = (level: number) => march(Float64Array.of(1, 0, 0, 1), grid, [level])[0]?.lines ?? [];
    // below the middle's 0.5 the high corners hang together, so the lines cut off the low ones at the upper right and the lower left
    expect(lines(0.4).map((l) => l.some((p) => p.x === 1 && p.y < 1))).toContain(true);
    for (const [level, corner] of [
      [0.4, { x: 1, y: 0 }],
      [0.6, { x: 0, y: 0 }],
    ] as const) {
      const nearest = Math.min(
        ...lines(level).map((l) => Math.max(...l.map((p) => Math.hypot(p.x - corner.x, p.y - corner.y)))),
      );
      expect(nearest).toBeLessThan(0.6);
    }
  });

  test('ends its lines where values are not known', () => {
    const [found] = march(
      valuesOf((x, y) => (x > 0 ? NaN : y)),
      GRID,
      [0.5],
    );
    expect(found?.lines).toHaveLength(1);
    expect(Math.max(...(found?.lines[0] ?? []).map((p) => p.x))).toBe(0);
  });
});
