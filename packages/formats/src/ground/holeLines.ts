import { frameAt, lengthM } from '@leeway/engine';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { MapGroup } from './feature.ts';
import type { HoleLine } from './holeLine.ts';
import { named, refsOf } from './holeNames.ts';
import type { Piece } from './piece.ts';
import { holds, nearest } from './whereNear.ts';

/** A line this far from a green at most is taken to end there. */
const NEAR_GREEN_M = 30;

/** A line longer or shorter than this is no hole. */
const LONGEST_M = 1500;
const SHORTEST_M = 15;

/** More nodes than this are no hole line, and more lines no extract of a course. */
const MOST_NODES = 1000;
const MOST_LINES = 300;

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
    if (!isLikely(piece, piece.shape.points, book)) continue;
    const turned = towardsGreen(piece, piece.shape.points, greens, book);
    const refs = refsOf(piece, turned.points, pieces, book);
    for (const ref of refs) found.push({ id: piece.id, ref, hole: ref, piece, box: piece.box, ...turned });
  }
  if (found.length > MOST_LINES) {
    book.add({
      code: 'too-many-holes',
      level: 'refused',
      found: `${found.length} hole lines`,
      expected: `an extract of at most ${MOST_LINES}`,
    });
    return [];
  }
  return named(found, pieces, groups, book).toSorted(byNumber);
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

/** Is a line one that a hole can have: neither too long nor too short, nor of too many nodes? */
function isLikely(piece: Piece, points: readonly GeoPoint[], book: FaultBook): boolean {
  const [first] = points;
  if (!first) return false;
  const leaveOut = (found: string, expected: string): false => {
    book.add({ code: 'hole-length', level: 'left out', found, expected, done: 'the hole is left out' }, piece.id);
    return false;
  };
  if (points.length > MOST_NODES) return leaveOut(`a hole line of ${points.length} nodes`, `at most ${MOST_NODES}`);
  const expected = `${SHORTEST_M} to ${LONGEST_M} m`;
  const { west, south, east, north } = piece.box;
  if (east - west > 1 || north - south > 1) return leaveOut('a hole line more than a degree long', expected);
  const holeM = lengthM(points.map(frameAt(first).toPlane));
  return (holeM >= SHORTEST_M && holeM <= LONGEST_M) || leaveOut(`a hole line of ${Math.round(holeM)} m`, expected);
}
