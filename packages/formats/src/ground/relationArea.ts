import { insideRing } from '@leeway/engine';
import type { GeoPoint, PlanePoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { GeoPolygon, GeoRing, MapFeature, Tags } from './feature.ts';
import { meaningOf } from './meaning.ts';
import { isWhole } from './osmData.ts';
import type { OsmRelation, OsmWay } from './osmData.ts';
import { joinToRings } from './joinRings.ts';

/** Rings of one relation times their corners, up to which they are nested against each other. */
const MOST_LOOKS = 2e8;

/** Tags that say nothing about the ground. */
const MUTE = new Set([
  'type',
  'source',
  'created_by',
  'note',
  'fixme',
  'FIXME',
  'attribution',
  'boundary',
  'layer',
  'comment',
]);
const speaking = (tags: Tags): [string, string][] => [...tags].filter(([key]) => !MUTE.has(key));

const LEFT_OUT = 'the relation is left out';

/** A relation's area, and the ids of the ways whose tags it takes over. */
export interface RelationArea {
  readonly feature: MapFeature;
  readonly spoken: readonly string[];
}

/**
 * The area of a multipolygon or boundary relation. Open member ways are joined end to end; a ring inside another is cut out of it, and
 * one inside that is land again. A relation without tags of its own takes those of its outer ways, as maps did before 2017.
 */
export function relationArea(
  relation: OsmRelation,
  ways: ReadonlyMap<string, OsmWay>,
  book: FaultBook,
): RelationArea | undefined {
  const id = `relation/${relation.id}`;
  const outerWays: OsmWay[] = [];
  const lines: { readonly outer: GeoPoint[][]; readonly inner: GeoPoint[][] } = { outer: [], inner: [] };
  let missing = 0;
  for (const member of relation.members) {
    if (member.type !== 'way') continue;
    const way = ways.get(member.ref);
    const points = way?.points ?? member.points;
    if (way && member.role !== 'inner') outerWays.push(way);
    if (points === undefined || points.length < 2 || !isWhole(points)) missing++;
    else lines[member.role === 'inner' ? 'inner' : 'outer'].push([...points]);
  }
  const own = speaking(relation.tags);
  const tags: Tags =
    own.length > 0 ? relation.tags : (outerWays.find((w) => speaking(w.tags).length > 0)?.tags ?? relation.tags);
  if (speaking(tags).length === 0) return undefined;

  const report: FaultBook['add'] = (text, at) => (meaningOf(tags) ? book.add(text, at) : undefined);
  if (missing > 0)
    report(
      {
        code: 'outside-file',
        level: 'note',
        found: `a relation with ${missing} of its ways not whole in the file`,
        expected: 'all its ways',
        done: 'the rings that close without them are kept',
      },
      id,
    );
  const outer = joinToRings(lines.outer);
  const inner = joinToRings(lines.inner);
  const open = outer.open.length + inner.open.length;
  if (open > 0)
    report(
      {
        code: 'unclosed-relation',
        level: 'note',
        found: `${open} of its rings do not close`,
        expected: 'closed rings',
        done: 'those rings are left out',
      },
      id,
    );
  const leaveOut = (found: string): undefined =>
    report({ code: 'no-ring', level: 'left out', found, expected: 'a closed outer ring', done: LEFT_OUT }, id);
  if (outer.rings.length === 0) return leaveOut('no outer ring that closes');
  const rings = [...outer.rings, ...inner.rings];
  if (rings.length * rings.reduce((sum, ring) => sum + ring.length, 0) > MOST_LOOKS)
    return leaveOut(`${rings.length} rings, too many to nest`);

  const spoken = outerWays.filter((w) => own.length === 0 || sayTheSame(w.tags, relation.tags)).map((w) => w.id);
  return { feature: { id, tags, shape: { kind: 'area', polygons: nested(outer.rings, inner.rings) } }, spoken };
}

/** Does a way repeat what its relation says of the ground? */
const sayTheSame = (way: Tags, relation: Tags): boolean =>
  ['golf', 'natural', 'landuse', 'waterway', 'leisure'].some(
    (key) => way.get(key) !== undefined && way.get(key) === relation.get(key),
  );

/** Outer and inner rings as polygons. Rings at an even depth are land, at an odd depth cut out of the ring next round them. */
function nested(outer: readonly GeoRing[], inner: readonly GeoRing[]): GeoPolygon[] {
  const flat = (p: GeoPoint): PlanePoint => ({ eastM: p.lon, northM: p.lat });
  const rings = [...outer, ...inner].map((ring, at) => ({ ring, plane: ring.map(flat), cuts: at >= outer.length }));
  const placed = rings.map((r) => {
    const [corner] = r.plane;
    const round = rings.filter((other) => other !== r && corner !== undefined && insideRing(corner, other.plane));
    return { ...r, round, depth: round.length };
  });
  const land = placed.filter((r) => r.depth % 2 === 0 && !(r.cuts && r.depth === 0));
  return land.map((r) => ({
    outer: r.ring,
    inner: placed
      .filter((hole) => hole.depth === r.depth + 1 && hole.round.some((other) => other.ring === r.ring))
      .map((hole) => hole.ring),
  }));
}
