import {
  distanceToPolygonM,
  frameAt,
  inPaintOrder,
  innerCentre,
  insidePolygon,
  lengthM,
  onGreen,
  outOfBounds,
  parByLength,
  placeFlag,
} from '@leeway/engine';
import type { Bound, GivenFlag, HoleGround, PlanePoint, Polygon } from '@leeway/engine';
import { areasOf } from './areas.ts';
import { cautionsOf } from './cautions.ts';
import type { FaultBook } from './faultBook.ts';
import type { HoleLine } from './holeLine.ts';
import { piecesNear } from './nearHole.ts';
import type { NearPiece } from './nearHole.ts';
import type { Piece } from './piece.ts';
import { teeOwners } from './teeOwners.ts';
import { planePolygon } from './whereNear.ts';

/** More areas than this within reach of one hole are no golf map. */
const MOST_AREAS = 5000;

/** The ground of one hole; undefined, with the reason in the book, when it cannot be played. */
export function assembleHole(
  line: HoleLine,
  pieces: readonly Piece[],
  lines: readonly HoleLine[],
  flag: GivenFlag | undefined,
  book: FaultBook,
): HoleGround | undefined {
  const [start] = line.points;
  if (!start) return undefined;
  if (line.green?.shape.kind !== 'area') {
    book.add(
      {
        code: 'no-green',
        level: 'left out',
        found: 'a hole line with no green at its end',
        expected: 'a golf=green area there',
        done: 'the hole is left out',
      },
      `hole ${line.hole} (${line.id})`,
    );
    return undefined;
  }
  const frame = frameAt(start);
  const plane = line.points.map(frame.toPlane);
  const ball: PlanePoint = { eastM: 0, northM: 0 };
  const near = piecesNear(pieces, line.box, plane, frame);
  const green = line.green.shape.polygons.map((p) => planePolygon(p, frame.toPlane));
  const own = teeOwners(near, lines, frame);
  const isOwnTee = (n: NearPiece): boolean => own.get(n.piece) === undefined || own.get(n.piece) === line;

  const pins = near.filter((n) => n.piece.meaning.kind === 'pin');
  const placed = placeFlag(flag, {
    frame,
    line: plane,
    green,
    numberedPins: pinPoints(pins.filter((n) => n.piece.tags.get('ref') === line.ref)),
    pins: pinPoints(pins),
  });
  if (!placed) {
    book.add(
      {
        code: 'flag-off-green',
        level: 'refused',
        found: 'a flag that is not on the green',
        expected: 'a place on the green',
      },
      `hole ${line.hole}`,
    );
    return undefined;
  }
  const tees = near.filter((n) => n.piece.meaning.kind === 'tee');
  noteStart(ball, tees, line, book);

  const bounds: Bound[] = near
    .filter((n) => n.piece.meaning.kind === 'outOfBounds')
    .flatMap(({ piece, polygons }) => polygons.map((polygon) => ({ id: piece.id, polygon, ...nameOf(piece) })));
  const play = [ball, placed.flag, ...greenCentres(green), ...ownTeeCentres(tees, own, line)];
  const out = outOfBounds(bounds, play);
  for (const id of out.boundaries)
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
  if (out.areas.some((a) => insidePolygon(placed.flag, a.polygon))) {
    book.add(
      {
        code: 'flag-out',
        level: 'left out',
        found: 'a flag that lies out of bounds',
        expected: 'a green in bounds',
        done: 'the hole is left out',
      },
      `hole ${line.hole} (${line.id})`,
    );
    return undefined;
  }

  const ground = [...areasOf(near, line.green, book), ...out.areas];
  if (ground.length > MOST_AREAS) {
    book.add(
      {
        code: 'too-many-areas',
        level: 'left out',
        found: `${ground.length} areas within reach`,
        expected: `at most ${MOST_AREAS}`,
        done: 'the hole is left out',
      },
      `hole ${line.hole} (${line.id})`,
    );
    return undefined;
  }
  return {
    hole: line.hole,
    ...nameOf(line.piece),
    ...parOf(line, lengthM(plane), book),
    frame,
    ball,
    ...placed,
    line: plane,
    areas: inPaintOrder(ground),
    cautions: cautionsOf(near, line.green, isOwnTee),
  };
}

const nameOf = (piece: Piece): { readonly name?: string } => (piece.name === undefined ? {} : { name: piece.name });

const pinPoints = (pins: readonly NearPiece[]): PlanePoint[] => pins.flatMap((n) => (n.point ? [n.point] : []));

const greenCentres = (green: readonly Polygon[]): PlanePoint[] => green.map((g) => innerCentre(g, 0.5));

const ownTeeCentres = (tees: readonly NearPiece[], own: ReadonlyMap<Piece, HoleLine>, line: HoleLine): PlanePoint[] =>
  tees
    .filter((n) => own.get(n.piece) === line)
    .flatMap((n) => (n.point ? [n.point] : n.polygons.map((p) => innerCentre(p, 0.5))));

function noteStart(ball: PlanePoint, tees: readonly NearPiece[], line: HoleLine, book: FaultBook): void {
  if (tees.some((n) => onGreen(ball, n.polygons))) return;
  const nearestM = Math.min(...tees.flatMap((n) => n.polygons.map((p) => distanceToPolygonM(ball, p))));
  const found =
    nearestM < Infinity
      ? `a hole line that starts ${nearestM.toFixed(1)} m outside the nearest tee area`
      : 'a hole without a tee area';
  book.add(
    {
      code: 'start-off-tee',
      level: 'note',
      found,
      expected: 'its first node in a tee',
      done: 'the ball starts at the first node, on a tee',
    },
    `hole ${line.hole} (${line.id})`,
  );
}

/** Par as tagged, else from the name ("Par 4"), else by length. */
function parOf(line: HoleLine, holeM: number, book: FaultBook): { readonly par: number; readonly parGuessed: boolean } {
  const { tags, name } = line.piece;
  const tagged = tags.get('par')?.trim();
  if (tagged !== undefined && /^[2-7]$/.test(tagged)) return { par: Number(tagged), parGuessed: false };
  const at = `hole ${line.hole} (${line.id})`;
  if (tagged !== undefined)
    book.add(
      {
        code: 'bad-par',
        level: 'note',
        found: `par=${tagged}`,
        expected: 'par=3 to 6',
        done: 'par is looked for elsewhere',
      },
      at,
    );
  const inName = /\bpar\s*([3-6])\b/i.exec(name ?? '')?.[1];
  if (inName !== undefined) return { par: Number(inName), parGuessed: false };
  book.add(
    {
      code: 'no-par',
      level: 'note',
      found: 'a hole without par',
      expected: 'par=3 to 6',
      done: 'par is guessed from the length',
    },
    at,
  );
  return { par: parByLength(holeM), parGuessed: true };
}
