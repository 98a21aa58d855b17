import { describe, expect, it } from 'vitest';
import type { Grid } from './blur.ts';
import { NEAR_WIDTHS, type Pyramid, pyramidShape, readLevel, WIDE_WIDTHS } from './pyramid.ts';
import { pyramidAlone } from './testdata/pyramidAlone.ts';

const base: Grid = { u0: -99.5, v0: -119.5, stepM: 1, columns: 200, rows: 240 };

describe('pyramid', () => {
  it('keeps a constant, and a plane, at every width', () => {
    const p = pyramidAlone(pyramidShape(base, WIDE_WIDTHS));
    for (let r = 0; r < base.rows; r++)
      for (let c = 0; c < base.columns; c++) p.cells[r * base.columns + c] = 3 + 0.01 * c - 0.02 * r;
    p.changed();
    p.refresh();
    p.levels.forEach((level, k) => {
      const got = readLevel(level, p.shape.grids[k]!, 7.3, -11.9);
      expect(got).toBeCloseTo(3 + 0.01 * (7.3 + 99.5) - 0.02 * (-11.9 + 119.5), 5);
    });
  });

  it('gives a bowl the variance of the kernel: E(u² + v²) = |centre|² + 2 sd²', () => {
    for (const [widths, grid] of [
      [WIDE_WIDTHS, base],
      [NEAR_WIDTHS, { u0: -31.875, v0: -31.875, stepM: 0.25, columns: 256, rows: 256 }],
    ] as const) {
      const p = pyramidAlone(pyramidShape(grid, widths));
      for (let r = 0; r < grid.rows; r++) {
        for (let c = 0; c < grid.columns; c++) {
          const u = grid.u0 + c * grid.stepM;
          const v = grid.v0 + r * grid.stepM;
          // the mean of the bowl over the cell, not its value at the centre
          p.cells[r * grid.columns + c] = u * u + v * v + grid.stepM ** 2 / 6;
        }
      }
      p.changed();
      p.refresh();
      widths.forEach((w, k) => {
        const g = p.shape.grids[k]!;
        // averaged over a cell of the grid, where the bilinear read has its stated variance
        let sum = 0;
        for (let i = 0; i < 8; i++)
          for (let j = 0; j < 8; j++) {
            const u = g.u0 + (Math.floor(g.columns / 2) + (i + 0.5) / 8) * g.stepM;
            const v = g.v0 + (Math.floor(g.rows / 2) + (j + 0.5) / 8) * g.stepM;
            sum += readLevel(p.levels[k]!, g, u, v) - (u * u + v * v);
          }
        expect(sum / 64 / (2 * w.sdM ** 2)).toBeCloseTo(1, 1.7);
      });
    }
  });

  it('refreshes a patch to the same figures as the whole', () => {
    const shape = pyramidShape(base, WIDE_WIDTHS);
    const a = pyramidAlone(shape);
    const b = pyramidAlone(shape);
    const paintInto = (p: Pyramid, bump: number): void => {
      for (let i = 0; i < p.cells.length; i++)
        p.cells[i] = Math.sin(i / 97) + (i % 200 > 90 && i % 200 < 110 && i > 20000 && i < 26000 ? bump : 0);
    };
    paintInto(a, 0);
    a.changed();
    a.refresh();
    paintInto(a, 1);
    a.changed({ c0: 90, c1: 110, r0: 99, r1: 131 });
    a.refresh();
    paintInto(b, 1);
    b.changed();
    b.refresh();
    a.levels.forEach((level, k) => {
      const other = b.levels[k]!;
      let worst = 0;
      for (let i = 0; i < level.length; i++) worst = Math.max(worst, Math.abs(level[i]! - other[i]!));
      expect(worst).toBeLessThan(1e-6);
    });
  });
});
