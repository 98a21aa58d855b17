import type { PlanePoint } from '@leeway/engine';
import { expect, test } from 'vitest';
import { rasterReader, UNMAPPED, writeRaster } from './strokeRaster.ts';

const CORNER = { eastM: -12.3, northM: 40.7 };
const OPPOSITE = { eastM: 30, northM: 75 };
/** West of nought is water, where a stroke is lost; north of 70 nothing is mapped. */
const kindAt = ({ eastM, northM }: PlanePoint): number => (northM > 70 ? UNMAPPED : eastM < 0 ? 1 : 0);
const strokesAt = ({ eastM, northM }: PlanePoint): number => 3 + 0.004 * northM - 0.003 * eastM + (eastM < 0 ? 1 : 0);

const read = rasterReader(
  JSON.parse(JSON.stringify(writeRaster(CORNER, OPPOSITE, strokesAt, kindAt))) as ReturnType<typeof writeRaster>,
);

test('strokes that rise evenly are read as they are, up to the bank and beyond it', () => {
  for (let eastM = -12; eastM < 29; eastM += 0.37) {
    for (let northM = 41; northM < 69; northM += 1.3) {
      const at = { eastM, northM };
      if (Math.abs(eastM) < 1) continue;
      expect(read(at)).toBeCloseTo(strokesAt(at), 2.9);
    }
  }
});

test('at the bank a figure is of one side or of the other, never between', () => {
  for (let eastM = -1; eastM <= 1; eastM += 0.05) {
    const off = read({ eastM, northM: 50 }) - strokesAt({ eastM: 0, northM: 50 });
    expect(Math.min(Math.abs(off), Math.abs(off - 1))).toBeLessThan(0.01);
  }
});

test('where nothing is mapped, or beyond the grid, there is no figure', () => {
  expect([read({ eastM: 5, northM: 73 }), read({ eastM: 500, northM: 50 }), read({ eastM: 5, northM: 0 })]).toEqual([
    NaN,
    NaN,
    NaN,
  ]);
});
