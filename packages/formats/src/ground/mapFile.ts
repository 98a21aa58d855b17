import { GROUND_CAPS, parseJson } from '@leeway/contract';
import type { FaultBook } from './faultBook.ts';
import type { MapFile } from './feature.ts';
import { readGeoJson } from './geojson.ts';
import { isObject } from './json.ts';
import { readOsmJson } from './osmJson.ts';
import { readOsmXml } from './osmXml.ts';

/** Reads a map in any of the three formats, told apart by what is in it; undefined when it is refused. */
export function readMap(text: string, book: FaultBook): MapFile | undefined {
  const expected = 'GeoJSON, OSM XML or the JSON of an OSM query';
  const refuse = (code: string, found: string): undefined => book.add({ code, level: 'refused', found, expected });
  if (text.length > GROUND_CAPS.characters)
    return refuse(
      'too-large',
      `${(text.length / 1e6).toFixed(0)} million characters; at most ${GROUND_CAPS.characters / 1e6} million are read`,
    );
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const first = /\S/.exec(body)?.[0];
  if (first === undefined) return refuse('empty-file', 'an empty file');
  if (first === '<') return standing(readOsmXml(body, book), book);
  if (first !== '{') return refuse('not-a-map', `a file that begins with "${first}"`);
  const { value: root, faults } = parseJson(body, book.file);
  book.take(faults);
  if (book.refused) return undefined;
  if (!isObject(root)) return refuse('not-a-map', 'JSON that is no object');
  if (Array.isArray(root['elements'])) return standing(readOsmJson(root, book), book);
  if (root['type'] === 'FeatureCollection' || root['type'] === 'Feature')
    return standing(readGeoJson(root, book), book);
  return refuse('not-a-map', `JSON of type ${JSON.stringify(root['type'])?.slice(0, 40) ?? 'none'} without elements`);
}

const standing = (map: MapFile | undefined, book: FaultBook): MapFile | undefined => (book.refused ? undefined : map);
