import type { GroundFile, Read } from '@leeway/contract';
import type { GivenFlag, HoleGround } from '@leeway/engine';
import { assembleHole } from './assemble.ts';
import { courseName } from './courseName.ts';
import { closeBook, faultBook } from './faultBook.ts';
import type { FaultBook } from './faultBook.ts';
import type { MapFile } from './feature.ts';
import { holeLines } from './holeLines.ts';
import type { HoleLine } from './holeLine.ts';
import { looksSwapped } from './looksSwapped.ts';
import { readMap } from './mapFile.ts';
import { noteUnused } from './noteUnused.ts';
import { piecesOf } from './piece.ts';
import type { Piece } from './piece.ts';
import { holds } from './whereNear.ts';
import type { HeightRaster } from '../heights/asciiGrid.ts';
import { spotsOf, withHeights } from '../heights/holeHeights.ts';

export interface GroundOptions {
  /** Only this hole: its number, with the course before it where a site has several. */
  readonly hole?: string;
  /** Where the flag is; needs `hole` unless it is a place on one of the greens. */
  readonly flag?: GivenFlag;
  /** Heights of the ground; in place of the map's own spot heights. */
  readonly heights?: HeightRaster;
}

/**
 * Reads the holes of a ground file: GeoJSON, OSM XML or the JSON of an OSM query, told apart by what is in it. What is wrong with the data is
 * reported by feature id with what was done about it; a hole without a green is left out and the others stand.
 * Refused, without a value, when nothing can be played: no map, a bad coordinate, no hole, not the hole or flag asked for.
 */
export function readGround(text: string, file: string, options: GroundOptions = {}): Read<GroundFile> {
  const book = faultBook(file);
  const map = readMap(text, book);
  return closeBook(book, map && groundOf(map, options, book));
}

/** The ground of a map that is read; undefined when it is refused. */
export function groundOf(map: MapFile, options: GroundOptions, book: FaultBook): GroundFile | undefined {
  const pieces = piecesOf(map, book);
  if (looksSwapped(pieces, map.pairs, book)) return undefined;
  const lines = holeLines(pieces, map.groups, book);
  noteUnused(pieces, lines, book);
  const spots = spotsOf(map.features);
  const wanted = asked(lines, pieces, options, book);
  const holes = wanted.flatMap((line): HoleGround[] => {
    const hole = assembleHole(line, pieces, lines, { flag: flagFor(line, options), only: wanted.length === 1 }, book);
    return hole ? [withHeights(hole, spots, options.heights)] : [];
  });
  if (holes.length === 0 && !book.refused)
    book.add({
      code: 'no-playable-hole',
      level: 'refused',
      found: 'no hole that can be played',
      expected: 'a hole line and a green',
    });
  const course = courseName(pieces, lines);
  return {
    ...(course === undefined ? {} : { course }),
    ...(map.attribution === undefined ? {} : { attribution: map.attribution }),
    holes,
  };
}

/** The lines that are asked for; none, and a refusal in the book, when there is no such hole. */
function asked(
  lines: readonly HoleLine[],
  pieces: readonly Piece[],
  { hole, flag }: GroundOptions,
  book: FaultBook,
): readonly HoleLine[] {
  const refuse = (code: string, found: string, expected: string): readonly HoleLine[] => {
    book.add({ code, level: 'refused', found, expected });
    return [];
  };
  if (lines.length === 0) {
    const greens = pieces.filter((p) => p.meaning.kind === 'green').length;
    return refuse(
      'no-holes',
      `no hole line, ${greens === 1 ? 'one green' : `${greens} greens`}`,
      'a golf=hole line from tee to green for each hole',
    );
  }
  if (hole !== undefined) {
    const exact = lines.filter((l) => l.hole === hole);
    const found = exact.length > 0 ? exact : lines.filter((l) => l.ref === hole);
    const names = lines.map((l) => l.hole).join(', ');
    if (found.length === 0) return refuse('no-such-hole', `no hole ${hole}`, `one of ${names}`);
    if (found.length > 1)
      return refuse(
        'which-course',
        `a hole ${hole} on ${found.length} courses`,
        `one of ${found.map((l) => l.hole).join(', ')}`,
      );
    return found;
  }
  if (flag === undefined || lines.length === 1) return lines;
  if (flag.kind === 'place' && lines.some((l) => l.green && holds(l.green, flag.at))) return lines;
  return refuse(
    'flag-off-green',
    flag.kind === 'place' ? 'a flag that is on no green' : 'a flag in paces without a hole',
    'a flag on the green of the hole asked for',
  );
}

function flagFor(line: HoleLine, { hole, flag }: GroundOptions): GivenFlag | undefined {
  if (flag?.kind !== 'place' || hole !== undefined) return flag;
  return line.green && holds(line.green, flag.at) ? flag : undefined;
}
