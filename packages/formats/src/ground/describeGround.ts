import type { GroundSummary, Read } from '@leeway/contract';
import { lengthM } from '@leeway/engine';
import { closeBook, faultBook } from './faultBook.ts';
import type { MapFeature } from './feature.ts';
import { readMap } from './mapFile.ts';
import { groundOf } from './readGround.ts';

/** Keys whose values are counted. */
const COUNTED: readonly string[] = ['golf', 'natural', 'landuse', 'leisure', 'waterway', 'highway', 'building'];
const SHAPES = { point: 'Point', line: 'LineString', area: 'Polygon' } as const;

/** What a ground file holds and how its holes read. Refused as `readGround` refuses. */
export function describeGround(text: string, file: string): Read<GroundSummary> {
  const book = faultBook(file);
  const map = readMap(text, book);
  const ground = map && groundOf(map, {}, book);
  if (!map || !ground) return { faults: book.faults() };
  const { holes, ...named } = ground;
  return closeBook(book, {
    features: map.features.length,
    counts: countTags(map.features),
    ...named,
    holes: holes.map((h) => ({
      hole: h.hole,
      ...(h.name === undefined ? {} : { name: h.name }),
      par: h.par,
      parGuessed: h.parGuessed,
      lengthM: lengthM(h.line),
      flagFrom: h.flagFrom,
      areas: counted(h.areas.map((a) => a.surface)),
      cautions: h.cautions.length,
    })),
  });
}

/** Features by tag and shape, `golf=bunker|Polygon`. */
export const countTags = (features: readonly MapFeature[]): { readonly [tagAndShape: string]: number } =>
  counted(
    features.flatMap((f) =>
      COUNTED.flatMap((key) => {
        const value = f.tags.get(key);
        return value === undefined ? [] : [`${key}=${value}|${SHAPES[f.shape.kind]}`];
      }),
    ),
  );

function counted(words: readonly string[]): { readonly [word: string]: number } {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return Object.fromEntries([...counts].toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
