import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frameAt } from '../geometry/frame.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';
import { pacedFlag, placeFlag } from './flag.ts';
import { approachRad } from './seenGreen.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const frame = frameAt({ lon: -30, lat: 47 });
/** A green 20 m wide and 30 m deep, its front 150 m up the line. */
const green = [{ outer: [at(-10, 150), at(10, 150), at(10, 180), at(-10, 180)], inner: [] }];
const line = [at(0, 0), at(0, 165)];
const bare = { frame, line, green, numberedPins: [], pins: [] };

describe('a flag in paces', () => {
  test('counts on from the front and in from the right or left edge', () => {
    expect(pacedFlag({ kind: 'paces', on: 16, in: 7, side: 'R' }, line, green)).toEqual(
      at(10 - 7 * YARD_M, 150 + 16 * YARD_M),
    );
    const left = pacedFlag({ kind: 'paces', on: 16, in: 7, side: 'L' }, line, green);
    expect(left?.eastM).toBeCloseTo(-10 + 7 * YARD_M, 9);
  });

  test('takes the edge at the depth of the flag', () => {
    const wedge = [{ outer: [at(0, 150), at(12, 174), at(-12, 174)], inner: [] }];
    // Halfway back the wedge is half as wide: its right edge stands 6 m right of the middle.
    const flag = pacedFlag({ kind: 'paces', on: 12 / YARD_M, in: 2 / YARD_M, side: 'R' }, line, wedge);
    expect(flag?.eastM).toBeCloseTo(4, 9);
    expect(flag?.northM).toBeCloseTo(162, 9);
  });

  test('follows the line of play into the green, not the tee', () => {
    const dogleg = [at(-300, 165), at(-120, 165), at(0, 165)];
    expect(approachRad(dogleg)).toBeCloseTo(Math.PI / 2, 12);
    // Played from the west, the front is the west edge and right is south.
    const flag = pacedFlag({ kind: 'paces', on: 5, in: 3, side: 'R' }, dogleg, green);
    expect(flag?.eastM).toBeCloseTo(-10 + 5 * YARD_M, 9);
    expect(flag?.northM).toBeCloseTo(150 + 3 * YARD_M, 9);
  });

  test('turns with the hole', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (rad) => {
        const turn = (p: PlanePoint): PlanePoint =>
          at(p.eastM * Math.cos(rad) + p.northM * Math.sin(rad), p.northM * Math.cos(rad) - p.eastM * Math.sin(rad));
        const given = { kind: 'paces', on: 16, in: 7, side: 'R' } as const;
        const straight = pacedFlag(given, line, green) ?? at(NaN, NaN);
        const turned = pacedFlag(given, line.map(turn), [{ outer: green[0]?.outer.map(turn) ?? [], inner: [] }]);
        expect(turned?.eastM).toBeCloseTo(turn(straight).eastM, 6);
        expect(turned?.northM).toBeCloseTo(turn(straight).northM, 6);
      }),
      { seed: 3, numRuns: 50 },
    );
  });

  test('is refused off the green', () => {
    expect(placeFlag({ kind: 'paces', on: 40, in: 2, side: 'R' }, bare)).toBeUndefined();
    expect(placeFlag({ kind: 'paces', on: 10, in: 30, side: 'R' }, bare)).toBeUndefined();
  });
});

describe('where the flag is', () => {
  const [own, other] = [at(4, 160), at(-4, 170)];

  test('as given', () => {
    const placed = placeFlag({ kind: 'place', at: frame.toGeo(at(3, 155)) }, { ...bare, numberedPins: [own] });
    expect(placed?.flagFrom).toBe('given');
    expect(placed?.flag.eastM).toBeCloseTo(3, 6);
    expect(placeFlag({ kind: 'place', at: frame.toGeo(at(30, 155)) }, bare)).toBeUndefined();
  });

  test('the pin with the number, else a pin in the green, else the end of the line, else the inner centre', () => {
    expect(placeFlag(undefined, { ...bare, numberedPins: [own], pins: [other, own] })).toEqual({
      flag: own,
      flagFrom: 'pin',
    });
    expect(placeFlag(undefined, { ...bare, numberedPins: [at(90, 0)], pins: [at(90, 0), other] })).toEqual({
      flag: other,
      flagFrom: 'pin',
    });
    expect(placeFlag(undefined, bare)).toEqual({ flag: at(0, 165), flagFrom: 'line end' });
    const short = placeFlag(undefined, { ...bare, line: [at(0, 0), at(0, 140)] });
    expect(short?.flagFrom).toBe('green centre');
    expect(short?.flag.eastM).toBeCloseTo(0, 1);
  });
});
