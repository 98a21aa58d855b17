import fc from 'fast-check';
import { expect, test } from 'vitest';
import { insidePolygon } from '../geometry/polygon.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { GREEN_ZONES, zoneOf, zonePlace } from './zone.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
/** A green 20 m wide and 30 m deep, its front 150 m up the line. */
const green = [{ outer: [at(-10, 150), at(10, 150), at(10, 180), at(-10, 180)], inner: [] }];
const line = [at(0, 0), at(0, 165)];

test('the nine zones of a square green are a fifth, a half and four fifths of its depth and width', () => {
  const places = GREEN_ZONES.map((zone) => zonePlace(zone, line, green));
  const wanted = [156, 165, 174].flatMap((north) => [-6, 0, 6].map((east) => at(east, north)));
  places.forEach((place, i) => {
    expect(place?.eastM).toBeCloseTo(wanted[i]!.eastM, 9);
    expect(place?.northM).toBeCloseTo(wanted[i]!.northM, 9);
  });
});

test('a zone is told by the line of play: from the west the front is the west edge, and right is south', () => {
  expect(zonePlace({ depth: 'front', side: 'right' }, [at(-300, 165), at(0, 165)], green)).toEqual(
    at(expect.closeTo(-6, 9) as never, expect.closeTo(156, 9) as never),
  );
});

test('places of zones lie on the green and in their zones, however the hole is turned and the green is shaped', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.array(fc.double({ min: 6, max: 18, noNaN: true }), { minLength: 12, maxLength: 12 }),
      (rad, radii) => {
        const turn = (p: PlanePoint): PlanePoint =>
          at(p.eastM * Math.cos(rad) + p.northM * Math.sin(rad), p.northM * Math.cos(rad) - p.eastM * Math.sin(rad));
        const outer = radii.map((r, i) => {
          const a = (i * Math.PI) / 6;
          return turn(at(r * Math.sin(a), 165 + r * Math.cos(a)));
        });
        const [bent, turned] = [[{ outer, inner: [] }], line.map(turn)];
        for (const zone of GREEN_ZONES) {
          const place = zonePlace(zone, turned, bent)!;
          expect(bent.some((g) => insidePolygon(place, g))).toBe(true);
        }
        const middle = zonePlace({ depth: 'middle', side: 'middle' }, turned, bent)!;
        expect(zoneOf(middle, turned, bent)?.depth).toBe('middle');
      },
    ),
    { seed: 11, numRuns: 40 },
  );
  for (const zone of GREEN_ZONES) expect(zoneOf(zonePlace(zone, line, green)!, line, green)).toEqual(zone);
});

test('off the green there is no zone', () => {
  expect(zoneOf(at(30, 165), line, green)).toBeUndefined();
  expect(zonePlace({ depth: 'front', side: 'left' }, line, [])).toBeUndefined();
});
