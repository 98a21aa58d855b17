import { distanceToPolygonM, frameAt, insidePolygon } from '@leeway/engine';
import type { GeoPoint, Polygon } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { GeoPolygon, MapGroup } from './feature.ts';
import { boxesNear, geoBox } from './piece.ts';
import type { GeoBox, Piece } from './piece.ts';

/** A hole line with its number, running from tee to green. */
export interface HoleLine {
  readonly id: string;
  /** The number as mapped, or found; an id when there is none. */
  readonly ref: string;
  /** How the hole is asked for: its number, with the course before it where a site has several. */
  readonly hole: string;
  readonly course?: string;
  readonly piece: Piece;
  readonly points: readonly GeoPoint[];
  readonly box: GeoBox;
  readonly green?: Piece;
}

/** A line this far from a green at most is taken to end there. */
const NEAR_GREEN_M = 30;

/** A tee or pin this near a line's end may lend it its number. */
const NEAR_END_M = 30;

/** A line longer or shorter than this is no hole. */
const LONGEST_M = 1500;
const SHORTEST_M = 15;

/** The hole lines of a file, turned to end at a green and numbered, in order of their numbers. */
export function holeLines(pieces: readonly Piece[], groups: readonly MapGroup[], book: FaultBook): HoleLine[] {
  const greens = pieces.filter((p) => p.meaning.kind === 'green');
  const ranges = pieces.filter((p) => p.meaning.kind === 'range');
  const found: HoleLine[] = [];
  for (const piece of pieces) {
    if (piece.meaning.kind !== 'hole') continue;
    if (piece.shape.kind !== 'line') {
      book.add(
        {
          code: 'hole-shape',
          level: 'left out',
          found: 'a hole that is no line',
          expected: 'a line from tee to green',
          done: 'it is left out',
        },
        piece.id,
      );
      continue;
    }
    if (isRange(piece, ranges)) {
      book.add(
        {
          code: 'range-line',
          level: 'left out',
          found: 'a hole line for the driving range',
          expected: 'holes from 1',
          done: 'it is left out',
        },
        piece.id,
      );
      continue;
    }
    const turned = towardsGreen(piece, piece.shape.points, greens, book);
    const refs = refsOf(piece, turned.points, pieces, book);
    for (const ref of refs) found.push({ id: piece.id, ref, hole: ref, piece, box: piece.box, ...turned });
  }
  return named(
    found.filter((line) => isLikely(line, book)),
    pieces,
    groups,
    book,
  ).toSorted(byNumber);
}

const byNumber = (a: HoleLine, b: HoleLine): number =>
  compare(a.course ?? '', b.course ?? '') || compare(order(a.ref), order(b.ref)) || compare(a.ref, b.ref);
const compare = <T extends string | number>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);
const order = (ref: string): number => (/^\d+/.test(ref) ? parseInt(ref, 10) : Infinity);

function isRange(piece: Piece, ranges: readonly Piece[]): boolean {
  const ref = piece.tags.get('ref')?.trim();
  if (ref !== undefined && /^0+$/.test(ref)) return true;
  if (ref !== undefined && ref !== '') return false;
  if (/driving range|practice/i.test(piece.name ?? '')) return true;
  const ends = piece.shape.kind === 'line' ? [piece.shape.points[0], piece.shape.points.at(-1)] : [];
  return ranges.some((range) => ends.every((end) => end !== undefined && holds(range, end)));
}

/** Does a piece's area hold a place? */
export function holds(piece: Piece, at: GeoPoint): boolean {
  if (piece.shape.kind !== 'area' || !boxesNear(piece.box, geoBox([at]), 1)) return false;
  const frame = frameAt(at);
  return piece.shape.polygons.some((p) => insidePolygon({ eastM: 0, northM: 0 }, planePolygon(p, frame.toPlane)));
}

export const planePolygon = (p: GeoPolygon, toPlane: ReturnType<typeof frameAt>['toPlane']): Polygon => ({
  outer: p.outer.map(toPlane),
  inner: p.inner.map((ring) => ring.map(toPlane)),
});

/** Distance from a place to a piece's area or point, if it is no more than `withinM`. */
function distanceWithinM(piece: Piece, at: GeoPoint, withinM: number): number | undefined {
  if (!boxesNear(piece.box, geoBox([at]), withinM)) return undefined;
  const frame = frameAt(at);
  const here = { eastM: 0, northM: 0 };
  const { shape } = piece;
  const distances =
    shape.kind === 'area'
      ? shape.polygons.map((p) => distanceToPolygonM(here, planePolygon(p, frame.toPlane)))
      : shape.kind === 'point'
        ? [Math.hypot(frame.toPlane(shape.at).eastM, frame.toPlane(shape.at).northM)]
        : [];
  const awayM = Math.min(...distances);
  return awayM <= withinM ? awayM : undefined;
}

/** The piece nearest to a place, within a distance; of several that hold it, the first. */
function nearest(pieces: readonly Piece[], at: GeoPoint, withinM: number): Piece | undefined {
  let best: { readonly piece: Piece; readonly awayM: number } | undefined;
  for (const piece of pieces) {
    const awayM = distanceWithinM(piece, at, withinM);
    if (awayM !== undefined && awayM < (best?.awayM ?? Infinity)) best = { piece, awayM };
  }
  return best?.piece;
}

/** The line's points so that they end at a green, and that green. */
function towardsGreen(
  piece: Piece,
  points: readonly GeoPoint[],
  greens: readonly Piece[],
  book: FaultBook,
): { readonly points: readonly GeoPoint[]; readonly green?: Piece } {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return { points };
  const atEnd = nearest(greens, last, 0);
  if (atEnd) return { points, green: atEnd };
  const atStart = nearest(greens, first, 0);
  const nearEnd = nearest(greens, last, NEAR_GREEN_M);
  if (atStart && !nearEnd) {
    book.add(
      {
        code: 'reversed-line',
        level: 'note',
        found: 'a hole line that starts in a green',
        expected: 'a line from tee to green',
        done: 'it is turned round',
      },
      piece.id,
    );
    return { points: points.toReversed(), green: atStart };
  }
  if (!nearEnd) return { points };
  book.add(
    {
      code: 'line-off-green',
      level: 'note',
      found: 'a hole line that ends outside every green',
      expected: 'its last node in the green',
      done: `the nearest green, within ${NEAR_GREEN_M} m, is taken`,
    },
    piece.id,
  );
  return { points, green: nearEnd };
}

/** The numbers of a line: its `ref` (several split by ";"), a number in its name, or that of a pin or tee at its ends. */
function refsOf(piece: Piece, points: readonly GeoPoint[], pieces: readonly Piece[], book: FaultBook): string[] {
  const mapped = (piece.tags.get('ref') ?? '')
    .split(';')
    .map((r) => r.trim())
    .filter((r) => r !== '');
  if (mapped.length > 0)
    return [...new Set(mapped.map((r) => (/^0*\d+$/.test(r) ? String(Number(r)) : r.slice(0, 40))))];
  const inName = /^(?:hole|no\.?|#)?\s*(\d{1,2})$/i.exec(piece.name ?? '')?.[1];
  const [first, last] = [points[0], points.at(-1)];
  const numbered = (kind: 'pin' | 'tee'): Piece[] =>
    pieces.filter((p) => p.meaning.kind === kind && /^\d{1,2}$/.test(p.tags.get('ref') ?? ''));
  const ref =
    inName ??
    (last && nearest(numbered('pin'), last, NEAR_END_M)?.tags.get('ref')) ??
    (first && nearest(numbered('tee'), first, NEAR_END_M)?.tags.get('ref'));
  const done =
    ref === undefined ? 'the hole is called by its id' : `it is taken to be hole ${ref}, by its name, pin or tee`;
  book.add(
    { code: 'no-ref', level: 'note', found: 'a hole line without ref', expected: 'ref=1 to 18', done },
    piece.id,
  );
  return [ref ?? piece.id];
}

function isLikely(line: HoleLine, book: FaultBook): boolean {
  const [first] = line.points;
  if (!first) return false;
  const frame = frameAt(first);
  let lengthM = 0;
  let prev = { eastM: 0, northM: 0 };
  for (const p of line.points) {
    const at = frame.toPlane(p);
    lengthM += Math.hypot(at.eastM - prev.eastM, at.northM - prev.northM);
    prev = at;
  }
  const far = line.box.east - line.box.west > 1 || line.box.north - line.box.south > 1;
  if (!far && lengthM >= SHORTEST_M && lengthM <= LONGEST_M) return true;
  const found = far ? 'a hole line more than a degree long' : `a hole line of ${Math.round(lengthM)} m`;
  book.add(
    {
      code: 'hole-length',
      level: 'left out',
      found,
      expected: `${SHORTEST_M} to ${LONGEST_M} m`,
      done: 'the hole is left out',
    },
    line.id,
  );
  return false;
}

/** Names holes apart on a site with several courses; of holes that cannot be told apart the first is kept. */
function named(
  lines: readonly HoleLine[],
  pieces: readonly Piece[],
  groups: readonly MapGroup[],
  book: FaultBook,
): HoleLine[] {
  const twice = new Set(lines.map((l) => l.ref).filter((ref, i, all) => all.indexOf(ref) !== i));
  if (twice.size === 0) return [...lines];
  const outlines = pieces.filter((p) => p.meaning.kind === 'course' && p.name !== undefined);
  const kept = new Map<string, HoleLine>();
  for (const line of lines) {
    const course = courseOf(line, outlines, groups);
    const hole = course === undefined ? line.ref : `${course} ${line.ref}`;
    if (kept.has(hole))
      book.add(
        {
          code: 'duplicate-ref',
          level: 'left out',
          found: `a second hole ${hole}`,
          expected: 'one hole of each number, or courses to tell them apart',
          done: 'the first is kept',
        },
        line.id,
      );
    else kept.set(hole, { ...line, hole, ...(course === undefined ? {} : { course }) });
  }
  return [...kept.values()];
}

function courseOf(line: HoleLine, outlines: readonly Piece[], groups: readonly MapGroup[]): string | undefined {
  const { tags } = line.piece;
  const said = tags.get('golf:course:name') ?? tags.get('course:name') ?? tags.get('course');
  if (said !== undefined && said !== '') return said;
  const group = groups.find((g) => g.members.includes(line.id));
  if (group) return group.tags.get('name') ?? group.id;
  const [first] = line.points;
  return first && outlines.find((outline) => holds(outline, first))?.name;
}
