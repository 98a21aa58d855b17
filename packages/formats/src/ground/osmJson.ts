import { GROUND_CAPS } from '@leeway/contract';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { MapFile, Tags } from './feature.ts';
import { isObject } from './json.ts';
import type { JsonObject } from './json.ts';
import { featuresOfOsm } from './osm.ts';
import type { OsmMember, OsmNode, OsmRelation, OsmWay, WayPoints } from './osmData.ts';
import { positions } from './positions.ts';

/**
 * Reads the JSON of an OSM query, already parsed: `elements` of nodes, ways and relations. A way's points are its own `geometry` when the
 * query gave one (null where a point lies outside the query's box), otherwise its nodes, looked up among the elements.
 */
export function readOsmJson(root: JsonObject, book: FaultBook): MapFile {
  const elements: readonly unknown[] = Array.isArray(root['elements']) ? root['elements'] : [];
  const read = positions(book);
  const nodes: OsmNode[] = [];
  const places = new Map<string, GeoPoint>();
  const rawWays: JsonObject[] = [];
  const rawRelations: JsonObject[] = [];
  const remark = root['remark'];
  if (typeof remark === 'string')
    book.add({
      code: 'query-remark',
      level: 'note',
      found: `the query's remark "${remark}"`,
      expected: 'a query that ran to its end',
      done: 'what it gave is read',
    });

  for (const [index, element] of elements.entries()) {
    if (read.stopped) break;
    const id = isObject(element) ? idOf(element['id']) : undefined;
    if (!isObject(element) || id === undefined || !['node', 'way', 'relation'].includes(String(element['type']))) {
      book.add(
        {
          code: 'bad-element',
          level: 'left out',
          found: 'an element without type or id',
          expected: 'a node, way or relation',
          done: 'it is left out',
        },
        `element ${index + 1}`,
      );
    } else if (isDropped(element)) {
      book.add(
        {
          code: 'deleted',
          level: 'note',
          found: 'an element marked as deleted',
          expected: 'present elements',
          done: 'it is left out',
        },
        `${String(element['type'])}/${id}`,
      );
    } else if (element['type'] === 'node') {
      const at = read.read(element['lon'], element['lat'], `node/${id}`);
      if (!at) continue;
      places.set(id, at);
      nodes.push({ id, at, tags: tagsOf(element['tags']) });
    } else (element['type'] === 'way' ? rawWays : rawRelations).push(element);
  }
  if (rawWays.length + rawRelations.length + nodes.filter((n) => n.tags.size > 0).length > GROUND_CAPS.features)
    book.add({
      code: 'too-many-features',
      level: 'refused',
      found: `${elements.length} elements`,
      expected: `at most ${GROUND_CAPS.features} features`,
    });

  const geometryPoints = (list: readonly unknown[], at: string): WayPoints =>
    list.map((p) =>
      isObject(p) && p['lat'] !== null && p['lon'] !== null ? read.read(p['lon'], p['lat'], at) : undefined,
    );
  const ways = new Map<string, OsmWay>();
  for (const raw of rawWays) {
    if (read.stopped) break;
    const id = String(raw['id']);
    const [geometry, refs] = [raw['geometry'], raw['nodes']];
    const points = Array.isArray(geometry)
      ? geometryPoints(geometry, `way/${id}`)
      : Array.isArray(refs)
        ? refs.map((ref) => places.get(String(ref)))
        : [];
    ways.set(id, { id, tags: tagsOf(raw['tags']), points });
  }
  const relations = rawRelations.map((raw): OsmRelation => {
    const id = String(raw['id']);
    const members = Array.isArray(raw['members']) ? raw['members'].filter(isObject) : [];
    return {
      id,
      tags: tagsOf(raw['tags']),
      members: members.map((m): OsmMember => {
        const points = Array.isArray(m['geometry']) ? geometryPoints(m['geometry'], `relation/${id}`) : undefined;
        return {
          type: String(m['type']),
          ref: String(m['ref']),
          role: typeof m['role'] === 'string' ? m['role'] : '',
          ...(points ? { points } : {}),
        };
      }),
    };
  });
  if (read.stopped) return { features: [], groups: [], pairs: false };
  return featuresOfOsm({ nodes, ways, relations }, book);
}

const idOf = (raw: unknown): string | undefined =>
  typeof raw === 'number' || typeof raw === 'string' ? String(raw).slice(0, 40) : undefined;

const isDropped = (element: JsonObject): boolean =>
  element['visible'] === false || element['visible'] === 'false' || element['action'] === 'delete';

function tagsOf(raw: unknown): Tags {
  const tags = new Map<string, string>();
  if (isObject(raw))
    for (const [key, value] of Object.entries(raw))
      if (typeof value === 'string' || typeof value === 'number') tags.set(key, String(value));
  return tags;
}
