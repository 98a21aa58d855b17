import type { FaultBook } from './faultBook.ts';
import { pointsOf } from './feature.ts';
import type { MapFile, Shape, Tags } from './feature.ts';
import { fitShape } from './fitShape.ts';
import { geoBox } from './geoBox.ts';
import type { GeoBox } from './geoBox.ts';
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
    const shape = fitShape(feature, meaning, book);
    if (shape === undefined) continue;
    const name = tags.get('name');
    pieces.push({ id, tags, meaning, shape, box: geoBox(pointsOf(shape)), ...(name ? { name } : {}) });
  }
  return pieces;
}
