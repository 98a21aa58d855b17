import { mendPolygon } from '@leeway/engine';
import type { Frame, GeoPoint, PlanePoint, RingFault } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { GeoPolygon, GeoRing, MapFeature, Shape } from './feature.ts';
import { DEGREE_M, turn } from './geoBox.ts';
import type { Meaning } from './meaning.ts';

/** A line tagged as an area is closed when its ends are this share of its length apart, or less. */
const CLOSING_SHARE = 0.2;

/** Meanings that ask for an area; a golf water may be a line too, which is then a stream, unless it all but closes. */
const AREAS: readonly Meaning['kind'][] = ['green', 'tee', 'range', 'outOfBounds', 'ground'];

/** The shape that a meaning asks for, or undefined when it cannot be had. */
export function fitShape({ id, shape }: MapFeature, meaning: Meaning, book: FaultBook): Shape | undefined {
  if (shape.kind === 'area') return mended(shape.polygons, id, book);
  const { kind } = meaning;
  if (kind === 'tee' ? shape.kind === 'point' : !AREAS.includes(kind)) return shape;
  if (kind === 'ground' && meaning.widthM !== undefined) {
    const { water } = meaning;
    if (shape.kind === 'point' ? !water : !(water?.golf && nearlyCloses(shape.points))) return shape;
  }
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

/** A closed line, or an open one that all but closes. */
function nearlyCloses(points: readonly GeoPoint[]): boolean {
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last || points.length < 3) return false;
  const gapDeg = apartDeg(first, last);
  return gapDeg <= CLOSING_SHARE * (lineDeg(points) + gapDeg);
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
  if (!nearlyCloses(points)) {
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

/** A flat sheet on which straight edges between degrees stay straight, for rings of any size. */
function flatSheet(origin: GeoPoint): Omit<Frame, 'origin'> {
  const lonM = DEGREE_M * Math.max(0.01, Math.cos((origin.lat * Math.PI) / 180));
  return {
    toPlane: (p) => ({ eastM: turn(p.lon - origin.lon) * lonM, northM: (p.lat - origin.lat) * DEGREE_M }),
    toGeo: (p) => ({ lon: turn(origin.lon + p.eastM / lonM), lat: origin.lat + p.northM / DEGREE_M }),
  };
}

const apartDeg = (a: GeoPoint, b: GeoPoint): number =>
  Math.hypot(turn(b.lon - a.lon) * Math.cos((a.lat * Math.PI) / 180), b.lat - a.lat);

const lineDeg = (points: readonly GeoPoint[]): number =>
  points.reduce((sum, p, i) => {
    const prev = points[i - 1];
    return prev ? sum + apartDeg(prev, p) : 0;
  }, 0);
