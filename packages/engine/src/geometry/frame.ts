import type { GeoPoint, PlanePoint } from '../quantity/points.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';

/** Plane <-> Earth for one hole. */
export interface Frame {
  readonly origin: GeoPoint;
  readonly toPlane: (p: GeoPoint) => PlanePoint;
  readonly toGeo: (p: PlanePoint) => GeoPoint;
}

/** Semi-major axis and flattening of WGS 84, and the square of its eccentricity. Exact by definition. */
const A_M = 6378137;
const F = 1 / 298.257223563;
const E_SQ = F * (2 - F);

/** Radius of curvature in the prime vertical: N = a / sqrt(1 - e² sin² lat). */
const primeVerticalM = (sinLat: number): number => A_M / Math.sqrt(1 - E_SQ * sinLat * sinLat);

/**
 * The plane that touches WGS 84 at `origin`; every place on the ellipsoid falls on it along the origin's vertical. With the two
 * radii of curvature at the origin, M = a (1 - e²) / (1 - e² sin² lat)^(3/2) along the meridian and N across it, it begins as
 * east = N cos(lat) dLon and north = M dLat; the higher terms are kept, since they reach 0.3 m at a distance of 1 km.
 *
 * Error: distances and bearings between places within 1 km of the origin are those of the geodesic to 0.1 mm (the scale across a
 * circle of radius d shrinks by d² / 2R², 1.3 parts in 10⁸ at 1 km). Heights are left out: everything lies on the ellipsoid.
 * Use it within some 20 km of the origin: the plane sees half the Earth only.
 */
export function frameAt(origin: GeoPoint): Frame {
  const [sinLat0, cosLat0] = [Math.sin(origin.lat * RAD_PER_DEG), Math.cos(origin.lat * RAD_PER_DEG)];
  const n0M = primeVerticalM(sinLat0);
  /** The origin's distance from the Earth's axis and its height above the equator's plane. */
  const [axis0M, polar0M] = [n0M * cosLat0, n0M * (1 - E_SQ) * sinLat0];

  const toPlane = (p: GeoPoint): PlanePoint => {
    const sinLat = Math.sin(p.lat * RAD_PER_DEG);
    const nM = primeVerticalM(sinLat);
    const axisM = nM * Math.cos(p.lat * RAD_PER_DEG);
    const polarM = nM * (1 - E_SQ) * sinLat;
    const lonRad = (p.lon - origin.lon) * RAD_PER_DEG;
    /** axisM cos(lonRad) - axis0M, without the loss of digits. */
    const awayM = axisM - axis0M - 2 * axisM * Math.sin(lonRad / 2) ** 2;
    return { eastM: axisM * Math.sin(lonRad), northM: cosLat0 * (polarM - polar0M) - sinLat0 * awayM };
  };

  const toGeo = (p: PlanePoint): GeoPoint => {
    const downM = sinkM(p);
    /** Away from the axis in the origin's meridian, east of that meridian, and above the equator's plane. */
    const x = axis0M - sinLat0 * p.northM - cosLat0 * downM;
    const z = polar0M + cosLat0 * p.northM - sinLat0 * downM;
    const lon = origin.lon + Math.atan2(p.eastM, x) / RAD_PER_DEG;
    const lat = Math.atan2(z, (1 - E_SQ) * Math.hypot(x, p.eastM)) / RAD_PER_DEG;
    return { lon: lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon, lat };
  };

  /** How far below the plane the ellipsoid lies under a point: the smaller root of a quadratic, w² + (z / (1-f))² = a². */
  const sinkM = (p: PlanePoint): number => {
    const squash = 1 / (1 - E_SQ);
    const x = axis0M - sinLat0 * p.northM;
    const z = polar0M + cosLat0 * p.northM;
    const square = cosLat0 * cosLat0 + squash * sinLat0 * sinLat0;
    const half = x * cosLat0 + squash * z * sinLat0;
    /** x² + e² + squash z² - a², from the differences to the origin, where it is nought. */
    const rest =
      p.eastM * p.eastM +
      p.northM * p.northM * (sinLat0 * sinLat0 + squash * cosLat0 * cosLat0) +
      2 * p.northM * (squash * polar0M * cosLat0 - axis0M * sinLat0);
    return rest / (half + Math.sqrt(Math.max(0, half * half - square * rest)));
  };

  return { origin, toPlane, toGeo };
}
