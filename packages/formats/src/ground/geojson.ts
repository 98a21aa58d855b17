import { GROUND_CAPS } from '@leeway/contract';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import { OSM_ATTRIBUTION } from './feature.ts';
import type { GeoPolygon, GeoRing, MapFeature, MapFile, Shape, Tags } from './feature.ts';
import { isObject } from './json.ts';
import type { JsonObject } from './json.ts';
import { positions } from './positions.ts';
import type { Positions } from './positions.ts';

const LEFT_OUT = 'the feature is left out';

/** Reads GeoJSON (RFC 7946), already parsed. Tags are the features' properties. Either winding of rings is taken. */
export function readGeoJson(root: JsonObject, book: FaultBook): MapFile {
  const raw = root['type'] === 'FeatureCollection' ? root['features'] : [root];
  const features: MapFeature[] = [];
  if (!Array.isArray(raw)) {
    book.add({
      code: 'bad-geojson',
      level: 'refused',
      found: 'a collection without a list of features',
      expected: '"features": […]',
    });
    return { features, groups: [], pairs: true };
  }
  if (raw.length > GROUND_CAPS.features) {
    book.add({
      code: 'too-many-features',
      level: 'refused',
      found: `${raw.length} features`,
      expected: `at most ${GROUND_CAPS.features}`,
    });
    return { features, groups: [], pairs: true };
  }
  const read = positions(book);
  let fromOsm = JSON.stringify([root['copyright'], root['attribution'], root['license']]).includes('OpenStreetMap');
  for (const [index, item] of raw.entries()) {
    if (read.stopped) break;
    if (!isObject(item) || item['type'] !== 'Feature') {
      const found = isObject(item) ? `type ${JSON.stringify(item['type'])?.slice(0, 40) ?? 'missing'}` : 'no object';
      book.add(
        { code: 'bad-feature', level: 'left out', found, expected: 'a Feature', done: LEFT_OUT },
        `feature ${index + 1}`,
      );
      continue;
    }
    const tags = tagsOf(item['properties']);
    const id = idOf(item, tags, index);
    fromOsm ||= /^(node|way|relation)\/\d+$/.test(id);
    for (const shape of shapesOf(item['geometry'], id, read, book, true)) features.push({ id, tags, shape });
  }
  return { features, groups: [], pairs: true, ...(fromOsm ? { attribution: OSM_ATTRIBUTION } : {}) };
}

function idOf(item: JsonObject, tags: Tags, index: number): string {
  const given = item['id'] ?? tags.get('@id') ?? tags.get('id');
  return typeof given === 'string' || typeof given === 'number' ? String(given).slice(0, 60) : `feature ${index + 1}`;
}

/** Properties as tags: texts, numbers and booleans; a nested object of tags is taken in. */
function tagsOf(properties: unknown): Tags {
  const tags = new Map<string, string>();
  if (!isObject(properties)) return tags;
  const nested = properties['tags'];
  for (const source of isObject(nested) ? [nested, properties] : [properties])
    for (const [key, value] of Object.entries(source))
      if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean')
        tags.set(key, String(value));
  return tags;
}

/** The shapes of a geometry: one, or one for each member of a multiple one (a MultiPolygon is one area). */
function shapesOf(geometry: unknown, id: string, read: Positions, book: FaultBook, outermost: boolean): Shape[] {
  const bad = (found: string, expected: string): Shape[] => {
    book.add({ code: 'bad-geometry', level: 'left out', found, expected, done: LEFT_OUT }, id);
    return [];
  };
  if (geometry === null || geometry === undefined) return bad('no geometry', 'a geometry');
  if (!isObject(geometry)) return bad('a geometry that is no object', 'a GeoJSON geometry');
  const { type, coordinates } = geometry;
  if (type === 'GeometryCollection') {
    const members = geometry['geometries'];
    if (!outermost || !Array.isArray(members)) return bad('a collection in a collection', 'plain geometries');
    return members.flatMap((member) => shapesOf(member, id, read, book, false));
  }
  if (!Array.isArray(coordinates)) return bad('no coordinates', 'a list of positions');
  const lineOf = (list: unknown): GeoPoint[] | undefined => line(list, id, read);
  switch (type) {
    case 'Point':
      return points([coordinates], id, read);
    case 'MultiPoint':
      return points(coordinates, id, read);
    case 'LineString':
    case 'MultiLineString': {
      const lines = (type === 'LineString' ? [coordinates] : coordinates).map(lineOf);
      if (lines.some((l) => l === undefined || l.length < 2))
        return bad('a line of fewer than two positions', 'two or more');
      return lines.flatMap((l) => (l ? [{ kind: 'line', points: l }] : []));
    }
    case 'Polygon':
    case 'MultiPolygon': {
      const polygons = (type === 'Polygon' ? [coordinates] : coordinates).map((p) => polygon(p, id, read, book));
      const whole = polygons.filter((p) => p !== undefined);
      if (whole.length < polygons.length || whole.length === 0)
        return bad('a polygon without rings', 'rings of positions');
      return [{ kind: 'area', polygons: whole }];
    }
    default:
      return bad(
        `geometry type ${JSON.stringify(type)?.slice(0, 40) ?? 'missing'}`,
        'one of the seven GeoJSON geometries',
      );
  }
}

const points = (list: readonly unknown[], id: string, read: Positions): Shape[] =>
  (line(list, id, read) ?? []).map((at) => ({ kind: 'point', at }));

function line(list: unknown, id: string, read: Positions): GeoPoint[] | undefined {
  if (!Array.isArray(list)) return undefined;
  const found: GeoPoint[] = [];
  for (const position of list) {
    const [lon, lat] = Array.isArray(position) ? (position as readonly unknown[]) : [];
    const p = read.read(lon, lat, id);
    if (p === undefined) return found;
    found.push(p);
  }
  return found;
}

function polygon(rings: unknown, id: string, read: Positions, book: FaultBook): GeoPolygon | undefined {
  if (!Array.isArray(rings)) return undefined;
  const closed: GeoRing[] = [];
  for (const raw of rings) {
    const ring = line(raw, id, read);
    if (ring === undefined || ring.length === 0) return undefined;
    const [first, last] = [ring[0], ring[ring.length - 1]];
    if (ring.length > 1 && first?.lon === last?.lon && first?.lat === last?.lat) ring.pop();
    else if (!read.stopped)
      book.add(
        {
          code: 'unclosed-ring',
          level: 'note',
          found: 'a ring whose last position is not its first',
          expected: 'a closed ring',
          done: 'it is closed with a straight edge',
        },
        id,
      );
    closed.push(ring);
  }
  const [outer, ...inner] = closed;
  return outer && { outer, inner };
}
