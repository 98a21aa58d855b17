import type { PlanePoint, Polygon } from '@leeway/engine';
import { distanceM, insidePolygon } from '@leeway/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ballsDrawn } from './ballsDrawn.ts';
import { greenAlong } from './greenAlong.ts';
import { keepOnGreen } from './keepOnGreen.ts';
import { nudged, toPaper, toPlane } from './placing.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const square = (half: number, north = 0): Polygon => ({
  outer: [at(-half, north - half), at(half, north - half), at(half, north + half), at(-half, north + half)],
  inner: [],
});
const placing = { origin: { x: 300, y: 500 }, pxPerM: 2, upRad: Math.PI / 2 };

describe('a sheet over the plane', () => {
  it('has the bearing straight up, and right of it to the right', () => {
    expect(toPaper(placing, at(10, 0))).toEqual({ x: 300, y: 480 });
    const right = toPaper(placing, at(0, -10));
    expect([right.x, right.y]).toEqual([expect.closeTo(320), expect.closeTo(500)]);
  });

  it('comes back from paper to the same place', () => {
    const numbers = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(numbers, numbers, fc.double({ min: -7, max: 7, noNaN: true }), (e, n, upRad) => {
        const there = { ...placing, upRad };
        expect(distanceM(toPlane(there, toPaper(there, at(e, n))), at(e, n))).toBeLessThan(1e-9);
      }),
      { seed: 3, numRuns: 100 },
    );
  });

  it('moves up the sheet and across it by metres', () => {
    const p = nudged(placing, at(0, 0), 3, 4);
    expect([p.eastM, p.northM]).toEqual([expect.closeTo(4), expect.closeTo(-3)]);
  });
});

describe('a dragged flag', () => {
  const green = [square(10)];

  it('stays where it is on the green', () => {
    expect(keepOnGreen(at(3, -9.99), green)).toEqual(at(3, -9.99));
  });

  it('comes to the nearest place on the green, a little inside', () => {
    expect(keepOnGreen(at(4, 60), green)).toEqual(at(4, expect.closeTo(9.7) as unknown as number));
  });

  it('is always on the green, corners and islands of fringe and all', () => {
    const holed: Polygon = { outer: square(10).outer, inner: [square(2).outer] };
    const numbers = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(numbers, numbers, (e, n) => {
        expect(insidePolygon(keepOnGreen(at(e, n), [holed]), holed)).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('stays where it is when there is no green', () => {
    expect(keepOnGreen(at(4, 60), [])).toEqual(at(4, 60));
  });
});

describe('front and back', () => {
  it('are where the flag line meets the green', () => {
    expect(greenAlong(at(0, 0), at(0, 103), [square(10, 100)])).toEqual({ frontM: 90, backM: 110 });
  });

  it('are not told from on the green', () => {
    expect(greenAlong(at(0, 95), at(0, 103), [square(10, 100)])).toBeUndefined();
  });
});

describe('balls drawn', () => {
  const balls = [
    { carryM: 95, sideM: -8, mishit: false },
    { carryM: 140, sideM: 20, mishit: false },
    { carryM: 60, mishit: true },
  ];

  it('lie inside the frame, on the middle line when no side was measured', () => {
    const { dots, widthPx, heightPx, middleY } = ballsDrawn(balls, 'yd');
    for (const { x, y } of dots) {
      expect(x).toBeGreaterThan(12);
      expect(x).toBeLessThan(widthPx - 12);
      expect(y).toBeGreaterThan(12);
      expect(y).toBeLessThan(heightPx - 12);
    }
    expect(dots[2]?.y).toBe(middleY);
    expect(dots[0]?.y).toBeLessThan(middleY);
  });

  it('stand where the rule says they do', () => {
    const { dots, rule } = ballsDrawn(balls, 'm');
    const bar = (figure: string): number => rule.find((r) => r.figure === figure)?.figureX ?? NaN;
    expect(dots[1]?.x).toBeCloseTo(bar('140'));
    expect(dots[2]?.x).toBeCloseTo(bar('60'));
  });
});
