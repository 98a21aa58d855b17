import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import { pointsOf } from './feature.ts';
import { turn } from './piece.ts';
import type { Piece } from './piece.ts';

/** No golf is played nearer a pole than this latitude. */
const POLEWARD_DEG = 75;

/** Features of one file lie this near each other, or something is wrong. */
const TOGETHER_DEG = 1;

/**
 * Does the map look as if longitude and latitude had changed places? Either all of it, which shows when golf would be played near a
 * pole, or single features, which shows when they lie far from the rest and would not if they were swapped back. A whole file
 * swapped into a place where golf is possible cannot be told.
 */
export function looksSwapped(pieces: readonly Piece[], book: FaultBook): boolean {
  const golf = pieces.flatMap((p) =>
    p.tags.has('golf')
      ? pointsOf(p.shape)
          .slice(0, 1)
          .map((at) => ({ id: p.id, at }))
      : [],
  );
  const middle = { lon: median(golf.map((g) => g.at.lon)), lat: median(golf.map((g) => g.at.lat)) };
  const expected = 'longitude first, then latitude; these look swapped';
  if (Math.abs(middle.lat) > POLEWARD_DEG) {
    book.add({
      code: 'swapped-coordinates',
      level: 'refused',
      found: `golf at latitude ${middle.lat.toFixed(1)}`,
      expected,
    });
    return true;
  }
  const strays = golf.filter((g) => !isBy(g.at, middle) && isBy({ lon: g.at.lat, lat: g.at.lon }, middle));
  for (const { id } of strays)
    book.add({ code: 'swapped-coordinates', level: 'refused', found: 'a feature far from the others', expected }, id);
  return strays.length > 0;
}

const isBy = (a: GeoPoint, b: GeoPoint): boolean =>
  Math.abs(turn(a.lon - b.lon)) <= TOGETHER_DEG && Math.abs(a.lat - b.lat) <= TOGETHER_DEG;

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
