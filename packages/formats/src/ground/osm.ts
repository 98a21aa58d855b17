import type { GeoPoint } from '@leeway/engine';
import { isAreaByTags } from './areaTags.ts';
import type { FaultBook } from './faultBook.ts';
import { OSM_ATTRIBUTION } from './feature.ts';
import type { MapFeature, MapFile, MapGroup } from './feature.ts';
import { meaningOf } from './meaning.ts';
import { isWhole, samePlace } from './osmData.ts';
import type { OsmData, OsmWay, WayPoints } from './osmData.ts';
import { relationArea } from './relationArea.ts';

/** OSM data as features: tagged nodes, tagged ways, and multipolygon relations whose rings close within the file. */
export function featuresOfOsm(data: OsmData, book: FaultBook): MapFile {
  const features: MapFeature[] = [];
  const groups: MapGroup[] = [];
  /** Ways whose tags a relation has taken over. */
  const spoken = new Set<string>();
  const fromRelations: MapFeature[] = [];
  for (const relation of data.relations) {
    const type = relation.tags.get('type');
    if (type === 'multipolygon' || type === 'boundary') {
      const area = relationArea(relation, data.ways, book);
      for (const id of area?.spoken ?? []) spoken.add(id);
      if (area) fromRelations.push(area.feature);
    } else if (relation.tags.get('route') === 'golf' || relation.tags.get('golf') === 'course') {
      const members = relation.members.map((m) => `${m.type}/${m.ref}`);
      groups.push({ id: `relation/${relation.id}`, tags: relation.tags, members });
    }
  }
  for (const node of data.nodes)
    if (node.tags.size > 0)
      features.push({ id: `node/${node.id}`, tags: node.tags, shape: { kind: 'point', at: node.at } });
  for (const way of data.ways.values())
    if (way.tags.size > 0 && !spoken.has(way.id)) features.push(...featuresOfWay(way, book));
  return { features: [...features, ...fromRelations], groups, pairs: false, attribution: OSM_ATTRIBUTION };
}

function featuresOfWay(way: OsmWay, book: FaultBook): MapFeature[] {
  const id = `way/${way.id}`;
  const { tags, points } = way;
  /** What means nothing for play is not worth a line. */
  const report: FaultBook['add'] = (text, at) => (meaningOf(tags) ? book.add(text, at) : undefined);
  const closed = points.length > 3 && samePlace(points[0], points[points.length - 1]);
  if (isWhole(points)) {
    if (closed && isAreaByTags(tags))
      return [{ id, tags, shape: { kind: 'area', polygons: [{ outer: points.slice(0, -1), inner: [] }] } }];
    if (points.length > 1) return [{ id, tags, shape: { kind: 'line', points } }];
    report(
      {
        code: 'short-way',
        level: 'left out',
        found: 'a way of fewer than two nodes',
        expected: 'two or more',
        done: 'it is left out',
      },
      id,
    );
    return [];
  }
  const found = 'a way with nodes that are not in the file';
  const expected = 'all its nodes';
  if (tags.has('golf') || isAreaByTags(tags)) {
    report({ code: 'outside-file', level: 'left out', found, expected, done: 'it is left out' }, id);
    return [];
  }
  report({ code: 'outside-file', level: 'note', found, expected, done: 'the parts in the file are kept' }, id);
  return runsOf(points).map((run) => ({ id, tags, shape: { kind: 'line', points: run } }));
}

/** The stretches of two or more points between missing ones. */
function runsOf(points: WayPoints): GeoPoint[][] {
  const runs: GeoPoint[][] = [[]];
  for (const p of points) {
    if (p === undefined) runs.push([]);
    else runs[runs.length - 1]?.push(p);
  }
  return runs.filter((run) => run.length > 1);
}
