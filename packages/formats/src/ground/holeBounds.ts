import { insidePolygon, outOfBounds } from '@leeway/engine';
import type { Area, Bound, PlanePoint } from '@leeway/engine';
import type { FaultBook, LeaveOut } from './faultBook.ts';
import type { NearPiece } from './nearHole.ts';

/**
 * What is out of bounds on a hole, from the mapped areas near it and the places of play: the ball's start first, then the flag, the green
 * and the tees. Undefined, with the reason in the book, when the flag itself would be out.
 */
export function boundsOf(
  near: readonly NearPiece[],
  places: { readonly ball: PlanePoint; readonly flag: PlanePoint; readonly others: readonly PlanePoint[] },
  at: string,
  leaveOut: LeaveOut,
  book: FaultBook,
): readonly Area[] | undefined {
  const bounds = near
    .filter((n) => n.piece.meaning.kind === 'outOfBounds')
    .flatMap(({ piece: { id, name }, polygons }) =>
      polygons.map((polygon): Bound => ({ id, polygon, ...(name === undefined ? {} : { name }) })),
    );
  const { areas, boundaries } = outOfBounds(bounds, [places.ball, places.flag, ...places.others]);
  for (const id of boundaries)
    book.add(
      {
        code: 'boundary',
        level: 'note',
        found: 'an out-of-bounds area round a tee or green',
        expected: 'ground that is out',
        done: 'it is the boundary: outside it is out',
      },
      id,
    );
  const isOut = (p: PlanePoint): boolean => areas.some((a) => insidePolygon(p, a.polygon));
  if (isOut(places.flag)) return leaveOut('flag-out', 'a flag that lies out of bounds', 'a green in bounds');
  if (isOut(places.ball))
    book.add(
      {
        code: 'ball-out',
        level: 'note',
        found: 'a tee that lies out of bounds',
        expected: 'a tee in bounds',
        done: 'the ball is played from there all the same',
      },
      at,
    );
  return areas;
}
