import type { FaultBook } from './faultBook.ts';
import type { HoleLine } from './holeLine.ts';
import type { Piece } from './piece.ts';

/** Says what is on the map and is not used as it stands. */
export function noteUnused(pieces: readonly Piece[], lines: readonly HoleLine[], book: FaultBook): void {
  const outlines = pieces.filter((p) => p.meaning.kind === 'course');
  const played = new Set(lines.map((line) => line.green));
  for (const piece of pieces) {
    const { id, meaning } = piece;
    if (meaning.kind === 'course' && outlines.length > 1)
      book.add(
        {
          code: 'several-outlines',
          level: 'note',
          found: 'one of several course outlines',
          expected: 'one',
          done: 'outlines are no boundary and give a name at most',
        },
        id,
      );
    if (meaning.kind === 'coastline')
      book.add(
        {
          code: 'coastline',
          level: 'left out',
          found: 'a coastline',
          expected: 'water as an area',
          done: 'the sea is left out',
        },
        id,
      );
    if (meaning.kind === 'green' && lines.length > 0 && !played.has(piece))
      book.add(
        {
          code: 'spare-green',
          level: 'note',
          found: 'a green at which no hole line ends',
          expected: 'one hole to each green',
          done: 'it plays as fairway, and balls are kept away from it',
        },
        id,
      );
  }
}
