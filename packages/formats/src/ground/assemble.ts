import { distanceToPolygonM, frameAt, inPaintOrder, innerCentre, lengthM, onGreen, placeFlag } from '@leeway/engine';
import type { GivenFlag, HoleGround, PlanePoint, Polygon } from '@leeway/engine';
import { areasOf } from './areas.ts';
import { cautionsOf } from './cautions.ts';
import type { FaultBook, LeaveOut } from './faultBook.ts';
import { boxesNear } from './geoBox.ts';
import { boundsOf } from './holeBounds.ts';
import type { HoleLine } from './holeLine.ts';
import { parOf } from './holePar.ts';
import { piecesNear } from './nearHole.ts';
import type { NearPiece } from './nearHole.ts';
import type { Piece } from './piece.ts';
import { teeOwners } from './teeOwners.ts';
import { planePolygon } from './whereNear.ts';

/** More areas than this within reach of one hole are no golf map. */
const MOST_AREAS = 5000;

/** Holes this near may own a tee beside this one. */
const NEIGHBOUR_M = 1000;

const LEFT_OUT = { level: 'left out', done: 'the hole is left out' } as const;
const REFUSED = { level: 'refused' } as const;

/** The ground of one hole; undefined, with the reason in the book, when it cannot be played. */
export function assembleHole(
  line: HoleLine,
  pieces: readonly Piece[],
  lines: readonly HoleLine[],
  asked: { readonly flag: GivenFlag | undefined; readonly only: boolean },
  book: FaultBook,
): HoleGround | undefined {
  const at = `hole ${line.hole} (${line.id})`;
  const leaveOut: LeaveOut = (code, found, expected) =>
    book.add({ code, found, expected, ...(asked.only ? REFUSED : LEFT_OUT) }, at);
  const [start] = line.points;
  if (!start || line.green?.shape.kind !== 'area')
    return leaveOut('no-green', 'a hole line with no green at its end', 'a golf=green area there');

  const frame = frameAt(start);
  const plane = line.points.map(frame.toPlane);
  const ball: PlanePoint = { eastM: 0, northM: 0 };
  const near = piecesNear(pieces, line.box, plane, frame);
  const green = line.green.shape.polygons.map((p) => planePolygon(p, frame.toPlane));
  const pins = near.filter((n) => n.piece.meaning.kind === 'pin');
  const numberedPins = pins.filter((n) => n.piece.tags.get('ref') === line.ref);
  const placed = placeFlag(asked.flag, {
    frame,
    line: plane,
    green,
    numberedPins: pinPoints(numberedPins),
    pins: pinPoints(pins),
  });
  if (!placed)
    return book.add(
      { code: 'flag-off-green', level: 'refused', found: 'a flag that is not on the green', expected: 'a place on it' },
      at,
    );

  notePins(numberedPins, green, at, book);
  const tees = near.filter((n) => n.piece.meaning.kind === 'tee');
  const neighbours = lines.filter((l) => boxesNear(l.box, line.box, NEIGHBOUR_M));
  const owners = teeOwners(tees, neighbours, frame);
  const ownTees = tees.filter((n) => owners.get(n.piece) === line);
  noteStart(ball, tees, at, book);
  const others = [...green.map((g) => innerCentre(g, 0.5)), ...ownTees.flatMap(middles)];
  const out = boundsOf(near, { ball, flag: placed.flag, others }, at, leaveOut, book);
  if (!out) return undefined;
  const areas = [...areasOf(near, line.green, book), ...out];
  if (areas.length > MOST_AREAS)
    return leaveOut('too-many-areas', `${areas.length} areas within reach`, `at most ${MOST_AREAS}`);
  return {
    hole: line.hole,
    ...(line.piece.name === undefined ? {} : { name: line.piece.name }),
    ...parOf(line, at, lengthM(plane), book),
    frame,
    ball,
    ...placed,
    line: plane,
    areas: inPaintOrder(areas),
    cautions: cautionsOf(near, line.green, (n) => ownTees.includes(n)),
  };
}

const pinPoints = (pins: readonly NearPiece[]): PlanePoint[] => pins.flatMap((n) => (n.point ? [n.point] : []));

const middles = (n: NearPiece): PlanePoint[] => (n.point ? [n.point] : n.polygons.map((p) => innerCentre(p, 0.5)));

function notePins(pins: readonly NearPiece[], green: readonly Polygon[], at: string, book: FaultBook): void {
  if (pins.length === 0 || pinPoints(pins).some((p) => onGreen(p, green))) return;
  const found = "a pin with the hole's number that is not in its green";
  book.add(
    { code: 'pin-off-green', level: 'note', found, expected: 'a pin in the green', done: 'it is passed over' },
    at,
  );
}

function noteStart(ball: PlanePoint, tees: readonly NearPiece[], at: string, book: FaultBook): void {
  if (tees.some((n) => onGreen(ball, n.polygons))) return;
  const nearestM = Math.min(...tees.flatMap((n) => n.polygons.map((p) => distanceToPolygonM(ball, p))));
  const found =
    nearestM < Infinity
      ? `a hole line that starts ${nearestM.toFixed(1)} m outside the nearest tee area`
      : 'a hole without a tee area';
  const done = 'the ball starts at the first node, on a tee';
  book.add({ code: 'start-off-tee', level: 'note', found, expected: 'its first node in a tee', done }, at);
}
