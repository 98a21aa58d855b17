import { mendPolygon } from '@leeway/engine';
import type { Frame, GeoPoint, PlanePoint, RingFault } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import { pointsOf } from './feature.ts';
import type { GeoPolygon, GeoRing, MapFeature, MapFile, Shape, Tags } from './feature.ts';
import { isUnknownGolf, meaningOf } from './meaning.ts';
import type { Meaning } from './meaning.ts';

/** A feature that means something for play, with rings that hold. */
export interface Piece {
  readonly id: string;
  readonly tags: Tags;
  readonly name?: string;
  readonly meaning: Meaning;
  readonly shape: Shape;
  readonly box: GeoBox;
}

/** A box in degrees; its longitudes run on across 180 degrees. */
export interface GeoBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** A line tagged as an area is closed when its ends are this share of its length apart, or less. */
const CLOSING_SHARE = 0.2;

/** The features that mean something for play, mended; what was mended or left out is in the book. */
export function piecesOf(map: MapFile, book: FaultBook): Piece[] {
  const pieces: Piece[] = [];
  for (const feature of map.features) {
    const { id, tags } = feature;
    if (isUnknownGolf(tags))
      book.add(
        {
          code: 'unknown-golf-tag',
          level: 'note',
          found: `golf=${tags.get('golf') ?? ''}`,
          expected: 'a documented golf tag',
          done: 'it is read by its other tags',
        },
        id,
      );
    const meaning = meaningOf(tags);
    if (meaning === undefined) continue;
    const shape = fitted(feature, meaning, book);
    if (shape === undefined) continue;
    const name = tags.get('name');
    pieces.push({ id, tags, meaning, shape, box: geoBox(pointsOf(shape)), ...(name ? { name } : {}) });
  }
  return pieces;
}

/** The shape that a meaning asks for, or undefined when it cannot be had. */
function fitted({ id, shape }: MapFeature, meaning: Meaning, book: FaultBook): Shape | undefined {
  if (shape.kind === 'area') return mended(shape.polygons, id, book);
  const wantsArea =
    meaning.kind === 'green' ||
    meaning.kind === 'range' ||
    meaning.kind === 'outOfBounds' ||
    (meaning.kind === 'ground' && meaning.widthM === undefined) ||
    (meaning.kind === 'tee' && shape.kind === 'line');
  if (!wantsArea) return shape;
  if (shape.kind === 'point') {
    book.add(
      {
        code: 'point-for-area',
        level: 'left out',
        found: 'a point where ground is tagged',
        expected: 'an area',
        done: 'it is left out',
      },
      id,
    );
    return undefined;
  }
  return closedLine(shape.points, id, meaning, book);
}

function closedLine(points: readonly GeoPoint[], id: string, meaning: Meaning, book: FaultBook): Shape | undefined {
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return undefined;
  const isClosed = first.lon === last.lon && first.lat === last.lat;
  const found = 'an open line where an area is tagged';
  if (!isClosed && meaning.kind === 'outOfBounds') {
    book.add(
      {
        code: 'open-boundary',
        level: 'left out',
        found: 'an open out-of-bounds line',
        expected: 'an area, so that its side is known',
        done: 'it puts nothing out of bounds',
      },
      id,
    );
    return undefined;
  }
  const [gapDeg, lengthDeg] = [apartDeg(first, last), lineDeg(points)];
  if (points.length < 3 || gapDeg > CLOSING_SHARE * (lengthDeg + gapDeg)) {
    book.add({ code: 'open-area', level: 'left out', found, expected: 'a closed ring', done: 'it is left out' }, id);
    return undefined;
  }
  if (!isClosed)
    book.add(
      { code: 'open-area', level: 'note', found, expected: 'a closed ring', done: 'it is closed with a straight edge' },
      id,
    );
  return mended([{ outer: isClosed ? points.slice(0, -1) : points, inner: [] }], id, book);
}

const RING_WORDS: { readonly [F in RingFault | 'inner outside']: { readonly found: string; readonly done: string } } = {
  few: { found: 'a ring of fewer than three corners', done: 'that ring is left out' },
  flat: { found: 'a ring without area', done: 'that ring is left out' },
  crossing: { found: 'a ring that crosses or touches itself', done: 'it covers all the ground that it winds round' },
  tangled: { found: 'a ring too tangled to look through', done: 'that ring is left out' },
  'inner outside': {
    found: 'an inner ring that reaches outside its outer ring',
    done: 'only the part inside is cut out',
  },
};

function mended(polygons: readonly GeoPolygon[], id: string, book: FaultBook): Shape | undefined {
  const whole: GeoPolygon[] = [];
  for (const polygon of polygons) {
    const [origin] = polygon.outer;
    if (origin === undefined) continue;
    const sheet = flatSheet(origin);
    const toPlane = (ring: GeoRing): PlanePoint[] => ring.map(sheet.toPlane);
    const { polygons: sound, faults } = mendPolygon({
      outer: toPlane(polygon.outer),
      inner: polygon.inner.map(toPlane),
    });
    for (const fault of new Set(faults)) {
      const { found, done } = RING_WORDS[fault];
      const expected = 'plain rings that cross nothing';
      book.add(
        {
          code: `ring-${fault.replace(' ', '-')}`,
          level: sound.length > 0 ? 'note' : 'left out',
          found,
          expected,
          done,
        },
        id,
      );
    }
    if (faults.length === 0) whole.push(polygon);
    else
      for (const p of sound)
        whole.push({ outer: p.outer.map(sheet.toGeo), inner: p.inner.map((ring) => ring.map(sheet.toGeo)) });
  }
  return whole.length > 0 ? { kind: 'area', polygons: whole } : undefined;
}

/** Metres in a degree, near enough to mend rings by: only which side of what, never a distance, is taken from them. */
const DEGREE_M = 111_000;

/** A flat sheet on which straight edges between degrees stay straight, for rings of any size. */
function flatSheet(origin: GeoPoint): Omit<Frame, 'origin'> {
  const lonM = DEGREE_M * Math.max(0.01, Math.cos((origin.lat * Math.PI) / 180));
  return {
    toPlane: (p) => ({ eastM: turn(p.lon - origin.lon) * lonM, northM: (p.lat - origin.lat) * DEGREE_M }),
    toGeo: (p) => ({ lon: turn(origin.lon + p.eastM / lonM), lat: origin.lat + p.northM / DEGREE_M }),
  };
}

/** A difference of longitudes, or a longitude, between -180 and 180 degrees. */
export const turn = (lon: number): number => (lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);

const apartDeg = (a: GeoPoint, b: GeoPoint): number =>
  Math.hypot(turn(b.lon - a.lon) * Math.cos((a.lat * Math.PI) / 180), b.lat - a.lat);

const lineDeg = (points: readonly GeoPoint[]): number =>
  points.reduce((sum, p, i) => {
    const prev = points[i - 1];
    return prev ? sum + apartDeg(prev, p) : 0;
  }, 0);

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
