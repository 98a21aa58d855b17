import type { GeoPoint } from '@leeway/engine';

/** A box in degrees; its longitudes run on across 180 degrees. */
export interface GeoBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Metres in a degree of latitude, at least: so many lie in it at the equator, and more elsewhere. */
export const DEGREE_M = 110_500;

/** A difference of longitudes, or a longitude, between -180 and 180 degrees. */
export const turn = (lon: number): number => (lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);

/** The smallest box round some places; an inside-out, infinite box for none. */
export function geoBox(points: readonly GeoPoint[]): GeoBox {
  const [first] = points;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  if (first === undefined) return { west, south, east, north };
  for (const p of points) {
    const lon = first.lon + turn(p.lon - first.lon);
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, p.lat);
    north = Math.max(north, p.lat);
  }
  return { west, south, east, north };
}

/** May two boxes come within `gapM` of each other? */
export function boxesNear(a: GeoBox, b: GeoBox, gapM: number): boolean {
  const gapLat = gapM / DEGREE_M;
  if (!(a.south - gapLat <= b.north && b.south - gapLat <= a.north)) return false;
  const poleward = Math.min(89, Math.max(Math.abs(a.south), Math.abs(a.north)) + gapLat);
  const gapLon = gapLat / Math.cos((poleward * Math.PI) / 180);
  return [-360, 0, 360].some((shift) => a.west - gapLon <= b.east + shift && b.west + shift - gapLon <= a.east);
}
