import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { GeoPoint } from '../quantity/points.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { frameAt } from './frame.ts';

/**
 * The direct geodesic problem on WGS 84: where a walk of `distanceM` from `start` on the bearing `bearingRad` ends.
 * T. Vincenty, "Direct and inverse solutions of geodesics on the ellipsoid", Survey Review 23 (1975), good to 0.1 mm.
 */
function walk(start: GeoPoint, bearingRad: number, distanceM: number): GeoPoint {
  const [a, f] = [6378137, 1 / 298.257223563];
  const b = a * (1 - f);
  const u1 = Math.atan((1 - f) * Math.tan(start.lat * RAD_PER_DEG));
  const [sinAz, cosAz] = [Math.sin(bearingRad), Math.cos(bearingRad)];
  const sigma1 = Math.atan2(Math.tan(u1), cosAz);
  const sinAlpha = Math.cos(u1) * sinAz;
  const cosSqAlpha = 1 - sinAlpha ** 2;
  const uSq = (cosSqAlpha * (a * a - b * b)) / (b * b);
  const bigA = 1 + (uSq / 16384) * (4096 + uSq * (-768 + uSq * (320 - 175 * uSq)));
  const bigB = (uSq / 1024) * (256 + uSq * (-128 + uSq * (74 - 47 * uSq)));
  let sigma = distanceM / (b * bigA);
  for (let i = 0; i < 20; i++) {
    const cos2m = Math.cos(2 * sigma1 + sigma);
    const [sin, cos] = [Math.sin(sigma), Math.cos(sigma)];
    const inner = cos * (-1 + 2 * cos2m ** 2) - (bigB / 6) * cos2m * (-3 + 4 * sin ** 2) * (-3 + 4 * cos2m ** 2);
    sigma = distanceM / (b * bigA) + bigB * sin * (cos2m + (bigB / 4) * inner);
  }
  const [sin, cos] = [Math.sin(sigma), Math.cos(sigma)];
  const away = Math.sin(u1) * sin - Math.cos(u1) * cos * cosAz;
  const lat = Math.atan2(Math.sin(u1) * cos + Math.cos(u1) * sin * cosAz, (1 - f) * Math.hypot(sinAlpha, away));
  const lambda = Math.atan2(sin * sinAz, Math.cos(u1) * cos - Math.sin(u1) * sin * cosAz);
  const c = (f / 16) * cosSqAlpha * (4 + f * (4 - 3 * cosSqAlpha));
  const cos2m = Math.cos(2 * sigma1 + sigma);
  const lon = lambda - (1 - c) * f * sinAlpha * (sigma + c * sin * (cos2m + c * cos * (-1 + 2 * cos2m ** 2)));
  return { lon: start.lon + lon / RAD_PER_DEG, lat: lat / RAD_PER_DEG };
}

const LATITUDES = [-54.8, -33.9, 0, 25, 36.1, 47, 54.2, 60.4, 69.9];
const BEARINGS_DEG = [0, 37, 90, 135, 180, 222, 270, 315];

describe('the plane of a hole', () => {
  test('keeps geodesic distances and bearings from its origin to 0.1 mm over 1 km', () => {
    let worstM = 0;
    for (const lat of LATITUDES)
      for (const deg of BEARINGS_DEG)
        for (const distanceM of [10, 150, 400, 1000]) {
          const frame = frameAt({ lon: -30, lat });
          const p = frame.toPlane(walk(frame.origin, deg * RAD_PER_DEG, distanceM));
          const errorE = p.eastM - distanceM * Math.sin(deg * RAD_PER_DEG);
          const errorN = p.northM - distanceM * Math.cos(deg * RAD_PER_DEG);
          worstM = Math.max(worstM, Math.hypot(errorE, errorN));
        }
    expect(worstM).toBeLessThan(1e-4);
  });

  test('keeps distances between places away from its origin to 0.1 mm', () => {
    for (const lat of LATITUDES) {
      const frame = frameAt({ lon: 141.3, lat });
      const from = walk(frame.origin, 2.1, 700);
      for (const deg of BEARINGS_DEG) {
        const to = walk(from, deg * RAD_PER_DEG, 300);
        const [a, b] = [frame.toPlane(from), frame.toPlane(to)];
        expect(Math.abs(Math.hypot(b.eastM - a.eastM, b.northM - a.northM) - 300)).toBeLessThan(1e-4);
      }
    }
  });

  test('agrees with Vincenty on a published line', () => {
    // Flinders Peak to Buninyong on GRS 80 (Geocentric Datum of Australia, technical manual, 2014): 54972.271 m on 306°52'05.37";
    // WGS 84 differs from GRS 80 by less than 0.1 mm here. This checks the formula that the tests above lean on.
    const end = walk(
      { lon: 144 + 25 / 60 + 29.5244 / 3600, lat: -(37 + 57 / 60 + 3.7203 / 3600) },
      (306 + 52 / 60 + 5.37 / 3600) * RAD_PER_DEG,
      54972.271,
    );
    expect(end.lat).toBeCloseTo(-(37 + 39 / 60 + 10.1561 / 3600), 7);
    expect(end.lon).toBeCloseTo(143 + 55 / 60 + 35.3839 / 3600, 7);
  });

  test('begins with the two radii of curvature', () => {
    const lat = 54.2;
    const sinSq = Math.sin(lat * RAD_PER_DEG) ** 2;
    const [a, eSq] = [6378137, 0.00669437999014];
    const nM = a / Math.sqrt(1 - eSq * sinSq);
    const mM = (a * (1 - eSq)) / (1 - eSq * sinSq) ** 1.5;
    const frame = frameAt({ lon: 0, lat });
    const step = 1e-4;
    expect(frame.toPlane({ lon: step, lat }).eastM).toBeCloseTo(
      nM * Math.cos(lat * RAD_PER_DEG) * step * RAD_PER_DEG,
      6,
    );
    expect(frame.toPlane({ lon: 0, lat: lat + step }).northM).toBeCloseTo(mM * step * RAD_PER_DEG, 3);
  });

  test('comes back to where it started', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        (lon, lat, eastM, northM) => {
          const frame = frameAt({ lon, lat });
          const geo = frame.toGeo({ eastM, northM });
          expect(Math.abs(geo.lon)).toBeLessThanOrEqual(180);
          const back = frame.toPlane(geo);
          expect(Math.hypot(back.eastM - eastM, back.northM - northM)).toBeLessThan(1e-6);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
