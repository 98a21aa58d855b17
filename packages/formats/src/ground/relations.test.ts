import { insidePolygon } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import { faultBook } from './faultBook.ts';
import type { MapFeature } from './feature.ts';
import { joinToRings } from './joinRings.ts';
import { readMap } from './mapFile.ts';

type Corner = readonly [number, number];
const square = (w: number, s: number, size: number): Corner[] => [
  [w, s],
  [w + size, s],
  [w + size, s + size],
  [w, s + size],
  [w, s],
];
const points = (corners: readonly Corner[]) => corners.map(([lon, lat]) => ({ lon, lat }));

interface Way {
  readonly id: number;
  readonly role: string;
  readonly corners: readonly Corner[];
  readonly tags?: { readonly [key: string]: string };
  /** Its points stand in the relation only, as some queries give them. */
  readonly inMember?: boolean;
}

/** A relation of ways, read from the JSON of a query. */
function read(tags: { readonly [key: string]: string }, ways: readonly Way[]) {
  const book = faultBook('map');
  const elements = [
    ...ways
      .filter((w) => !w.inMember)
      .map((w) => ({ type: 'way', id: w.id, tags: w.tags ?? {}, geometry: points(w.corners) })),
    {
      type: 'relation',
      id: 9,
      tags: { type: 'multipolygon', ...tags },
      members: ways.map((w) => ({
        type: 'way',
        ref: w.id,
        role: w.role,
        ...(w.inMember ? { geometry: points(w.corners) } : {}),
      })),
    },
  ];
  const map = readMap(JSON.stringify({ elements }), book);
  return { features: map?.features ?? [], codes: book.faults().map((f) => f.code) };
}

const covers = (feature: MapFeature | undefined, [lon, lat]: Corner): boolean =>
  feature?.shape.kind === 'area' &&
  feature.shape.polygons.some((p) => {
    const flat = (ring: readonly { lon: number; lat: number }[]) => ring.map((q) => ({ eastM: q.lon, northM: q.lat }));
    return insidePolygon({ eastM: lon, northM: lat }, { outer: flat(p.outer), inner: p.inner.map(flat) });
  });

describe('multipolygon relations', () => {
  test('open ways are joined end to end, either way round', () => {
    const ring = square(0, 0, 4);
    const { rings, open } = joinToRings([
      points(ring.slice(0, 3)),
      points(ring.slice(2).toReversed()),
      points([
        [9, 9],
        [8, 8],
      ]),
    ]);
    expect(rings).toHaveLength(1);
    expect(rings[0]).toHaveLength(4);
    expect(open).toHaveLength(1);
  });

  test('rings nest: land, hole, land in the hole', () => {
    const { features, codes } = read({ natural: 'water' }, [
      { id: 1, role: 'outer', corners: square(0, 0, 10) },
      { id: 2, role: 'inner', corners: square(2, 2, 6) },
      { id: 3, role: 'outer', corners: square(4, 4, 2) },
      { id: 4, role: 'outer', corners: square(20, 0, 5) },
    ]);
    expect(codes).toEqual([]);
    const [lake] = features;
    expect([covers(lake, [1, 1]), covers(lake, [3, 3]), covers(lake, [5, 5]), covers(lake, [22, 2])]).toEqual([
      true,
      false,
      true,
      true,
    ]);
  });

  test('old style: the outer way has the tags, and is not there twice', () => {
    const { features } = read({}, [
      { id: 1, role: 'outer', corners: square(0, 0, 10), tags: { golf: 'fairway' } },
      { id: 2, role: 'inner', corners: square(2, 2, 6), tags: { golf: 'bunker' } },
    ]);
    expect(features.map((f) => [f.id, f.tags.get('golf')])).toEqual([
      ['way/2', 'bunker'],
      ['relation/9', 'fairway'],
    ]);
    expect(covers(features[1], [5, 5])).toBe(false);
  });

  test('an outer way with ground of its own stays a feature', () => {
    const { features } = read({ natural: 'wood' }, [
      { id: 1, role: 'outer', corners: square(0, 0, 10), tags: { golf: 'rough' } },
      { id: 2, role: 'outer', corners: square(20, 0, 10), tags: { natural: 'wood' } },
    ]);
    expect(features.map((f) => f.id)).toEqual(['way/1', 'relation/9']);
  });

  test('members may bring their own points; a cut relation keeps the rings that close', () => {
    const cut = read({ natural: 'wood' }, [
      { id: 1, role: 'outer', corners: square(0, 0, 10), inMember: true },
      { id: 2, role: 'outer', corners: square(20, 0, 10).slice(0, 3), inMember: true },
      { id: 3, role: 'inner', corners: [] },
    ]);
    expect(cut.codes).toEqual(expect.arrayContaining(['outside-file', 'unclosed-relation']));
    expect(covers(cut.features.at(-1), [5, 5])).toBe(true);
    const gone = read({ natural: 'wood' }, [
      { id: 2, role: 'outer', corners: square(20, 0, 10).slice(0, 3), inMember: true },
    ]);
    expect(gone.codes).toEqual(['unclosed-relation', 'no-ring']);
  });

  test('an inner ring whose outer ring is missing covers nothing', () => {
    const { features } = read({ natural: 'wood' }, [
      { id: 1, role: 'outer', corners: square(0, 0, 10) },
      { id: 2, role: 'inner', corners: square(50, 50, 5) },
    ]);
    expect(covers(features[0], [52, 52])).toBe(false);
  });
});
