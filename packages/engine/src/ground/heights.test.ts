import { describe, expect, test } from 'vitest';
import { heightOn, heightsOver, throughSpots } from './heights.ts';

const BOX = { westM: -50, eastM: 55, southM: 0, northM: 200 };
const sloping = (p: { eastM: number; northM: number }): number => 12 + 0.1 * p.northM - 0.05 * p.eastM;

describe('heights of the ground', () => {
  test('a plane is itself everywhere inside, and held beyond the edge', () => {
    const h = heightsOver(BOX, sloping, 'raster');
    if (h === undefined) throw new Error('no heights');
    for (const [east, north] of [
      [0, 0],
      [13.3, 77.7],
      [-49, 199],
    ] as const)
      expect(heightOn(h, east, north)).toBeCloseTo(sloping({ eastM: east, northM: north }), 4);
    expect(heightOn(h, 0, -500)).toBeCloseTo(12, 4);
  });

  test('nodes without a height take those about them; none at all is no ground', () => {
    const h = heightsOver(BOX, (p) => (p.northM < 100 ? 7 : undefined), 'raster');
    expect(h && heightOn(h, 0, 190)).toBeCloseTo(7, 6);
    expect(heightsOver(BOX, () => undefined, 'raster')).toBeUndefined();
  });

  test('ground through spots has their heights at them, lies between them, and is level where they are', () => {
    const spots = [
      { at: { eastM: 0, northM: 0 }, heightM: 10 },
      { at: { eastM: 0, northM: 100 }, heightM: 20 },
      { at: { eastM: 60, northM: 50 }, heightM: 14 },
    ];
    const at = throughSpots(spots);
    for (const s of spots) expect(at(s.at)).toBeCloseTo(s.heightM, 2);
    expect(at({ eastM: 0, northM: 50 })).toBeGreaterThan(10);
    expect(at({ eastM: 0, northM: 50 })).toBeLessThan(20);
    expect(throughSpots(spots.map((s) => ({ ...s, heightM: 5 })))({ eastM: 31, northM: 7 })).toBeCloseTo(5, 9);
  });
});
