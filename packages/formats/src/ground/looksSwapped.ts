import { signedAreaSqM } from '@leeway/engine';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import { pointsOf } from './feature.ts';
import type { GeoRing } from './feature.ts';
import { turn } from './geoBox.ts';
import type { Piece } from './piece.ts';

/** No golf is played nearer a pole than this latitude. */
const POLEWARD_DEG = 75;

/** Features of one file lie this near each other, or something is wrong. */
const TOGETHER_DEG = 1;

/** Greens and bunkers needed before their shapes are evidence, and the least stretch by a swap that they could show. */
const FEWEST_SHAPES = 4;
const LEAST_STRETCH = 0.15;

/**
 * Does the map look as if longitude and latitude had changed places? Single features show it when they lie far from the rest and would
 * not if they were swapped back. All of a map shows it when golf would be played near a pole, or, where positions are bare pairs
 * (`pairs`), when its shapes are those of a map that was mirrored and stretched by the swap (`isMirrored`).
 */
export function looksSwapped(pieces: readonly Piece[], pairs: boolean, book: FaultBook): boolean {
  const golf = pieces.filter((p) => p.tags.has('golf'));
  const places = golf.flatMap((p) =>
    pointsOf(p.shape)
      .slice(0, 1)
      .map((at) => ({ id: p.id, at })),
  );
  const middle = { lon: median(places.map((g) => g.at.lon)), lat: median(places.map((g) => g.at.lat)) };
  const refuse = (
    found: string,
    at?: string,
    expected = 'longitude first, then latitude; these look swapped',
  ): void => {
    book.add({ code: 'swapped-coordinates', level: 'refused', found, expected }, at);
  };
  if (Math.abs(middle.lat) > POLEWARD_DEG) refuse(`golf at latitude ${middle.lat.toFixed(1)}`);
  const strays = places.filter((g) => !isBy(g.at, middle) && isBy({ lon: g.at.lat, lat: g.at.lon }, middle));
  for (const { id } of strays) refuse('a feature far from the others', id);
  if (!book.refused && pairs && isMirrored(golf, middle))
    refuse(
      'clockwise rings, all stretched north',
      undefined,
      'longitude first, then latitude (or, if the map is right, outer rings anticlockwise)',
    );
  return book.refused;
}

/**
 * A swap mirrors every shape, so that outer rings, anticlockwise by RFC 7946, all run clockwise, and stretches it north by
 * 1 / (cos(lon) cos(lat)). Greens and bunkers point every way: when their mean stretch stands three standard errors from none and
 * less than half of it would be left after swapping back, the map is swapped. Either sign alone proves nothing.
 */
function isMirrored(golf: readonly Piece[], middle: GeoPoint): boolean {
  const areas = golf.flatMap((p) =>
    p.shape.kind === 'area' ? p.shape.polygons.map(({ outer }) => ({ outer, value: p.tags.get('golf') })) : [],
  );
  const shapes = areas.filter((a) => a.value === 'green' || a.value === 'bunker');
  const bySwap = -Math.log(Math.abs(Math.cos((middle.lon * Math.PI) / 180) * Math.cos((middle.lat * Math.PI) / 180)));
  if (shapes.length < FEWEST_SHAPES || bySwap < LEAST_STRETCH || areas.some((a) => !isClockwise(a.outer))) return false;
  const stretches = shapes.map((a) => logStretch(a.outer, middle.lat));
  const mean = stretches.reduce((sum, s) => sum + s, 0) / stretches.length;
  const variance = stretches.reduce((sum, s) => sum + (s - mean) ** 2, 0) / (stretches.length - 1);
  return mean > 3 * Math.sqrt(variance / stretches.length) && Math.abs(mean - bySwap) < mean / 2;
}

const isClockwise = (ring: GeoRing): boolean =>
  signedAreaSqM(ring.map((p) => ({ eastM: turn(p.lon - (ring[0]?.lon ?? 0)), northM: p.lat }))) < 0;

/** Logarithm of how much a ring spreads north against how much it spreads east; nought when it does not spread. */
function logStretch(ring: GeoRing, lat: number): number {
  const [lons, lats] = [ring.map((p) => turn(p.lon - (ring[0]?.lon ?? 0))), ring.map((p) => p.lat)];
  const stretch = spread(lats) / (spread(lons) * Math.cos((lat * Math.PI) / 180));
  return stretch > 0 && stretch < Infinity ? Math.log(stretch) : 0;
}

function spread(values: readonly number[]): number {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
}

const isBy = (a: GeoPoint, b: GeoPoint): boolean =>
  Math.abs(turn(a.lon - b.lon)) <= TOGETHER_DEG && Math.abs(a.lat - b.lat) <= TOGETHER_DEG;

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
