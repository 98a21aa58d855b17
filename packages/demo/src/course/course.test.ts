import { frameAt, insideRing, lengthM, parByLength, type Ring, ringFault, sharedAreaSqM } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { expect, test } from 'vitest';
import { groundFile } from '../groundFile.ts';
import { shareOfBox, strayFromEllipse } from '../ringShape.ts';
import { TOLVANE } from './course.ts';

interface Drawn {
  readonly id: string;
  readonly properties: { readonly [tag: string]: string };
  readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly [number, number])[][] };
}

const text = groundFile(TOLVANE);
const { features } = JSON.parse(text) as { features: readonly Drawn[] };
const { value, faults } = readGround(text, 'tolvane.geojson');
const holes = value?.holes ?? [];
const { toPlane } = frameAt({ lon: -27.6, lat: 48.9 });
const outlines = features
  .filter((f) => f.geometry.type === 'Polygon')
  .map((f) => ({
    id: f.id,
    hole: f.id.split('/')[0],
    tags: f.properties,
    ring: (f.geometry.coordinates[0] ?? []).slice(1).map(([lon, lat]): Ring[number] => toPlane({ lon, lat })),
  }));
const golf = (kind: string) => outlines.filter((o) => o.tags.golf === kind);
const water = outlines.filter((o) => o.tags.natural === 'water');
const count = (par: number): number => holes.filter((h) => h.par === par).length;

test('eighteen holes, par 71: five short, nine middling, four long, and each stroke index once', () => {
  expect(faults.map((f) => f.code)).toEqual(['driving-range']);
  expect(holes.map((h) => h.hole)).toEqual(Array.from({ length: 18 }, (_, i) => `${i + 1}`));
  expect([count(3), count(4), count(5)]).toEqual([5, 9, 4]);
  const indices = features.filter((f) => f.properties.golf === 'hole').map((f) => Number(f.properties.handicap));
  expect(indices.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 18 }, (_, i) => i + 1));
});

test.each(holes.map((h) => [h.name ?? h.hole, h] as const))(
  '%s: named, as long as its par, from a tee to a pin in its green',
  (_name, hole) => {
    const inside = (surface: string, p: Ring[number]): boolean =>
      hole.areas.some((a) => a.surface === surface && insideRing(p, a.polygon.outer));
    expect(hole.name).toBeDefined();
    expect(parByLength(lengthM(hole.line))).toBe(hole.par);
    expect(hole.flagFrom).toBe('pin');
    expect([inside('tee', hole.ball), inside('green', hole.flag)]).toEqual([true, true]);
  },
);

test('par 3s are short and long, and the short par 4 tempts', () => {
  const lengthsM = (par: number) => holes.filter((h) => h.par === par).map((h) => lengthM(h.line));
  expect(Math.min(...lengthsM(3))).toBeLessThan(125);
  expect(Math.max(...lengthsM(3))).toBeGreaterThan(195);
  expect(Math.min(...lengthsM(4))).toBeLessThan(280);
  expect(Math.max(...lengthsM(4))).toBeGreaterThan(390);
});

test('doglegs turn both ways', () => {
  const turns = holes.map(({ line: [a, b, c] }) =>
    a === undefined || b === undefined || c === undefined
      ? 0
      : Math.sign((b.eastM - a.eastM) * (c.northM - b.northM) - (b.northM - a.northM) * (c.eastM - b.eastM)),
  );
  expect(turns.filter((t) => t > 0).length).toBeGreaterThanOrEqual(3);
  expect(turns.filter((t) => t < 0).length).toBeGreaterThanOrEqual(3);
});

test('water, out of bounds, trees and sand come into play where they are promised', () => {
  const withSurface = (surface: string) =>
    holes.filter((h) => h.areas.some((a) => a.surface === surface)).map((h) => Number(h.hole));
  expect(withSurface('penalty')).toEqual(expect.arrayContaining([1, 4, 7, 9, 10, 11, 13, 15, 18]));
  expect(withSurface('out')).toEqual(expect.arrayContaining([1, 2, 7, 16]));
  expect(withSurface('recovery').length).toBe(18);
  expect(withSurface('bunker').length).toBe(18);
});

test('one green is an island', () => {
  const islands = golf('green').filter(({ ring }) => water.some((w) => ring.every((p) => insideRing(p, w.ring))));
  expect(islands.map((g) => g.hole)).toEqual(['the-eyot']);
});

test('rings are sound, and greens have at least 20 corners', () => {
  expect(outlines.filter((o) => ringFault(o.ring) !== undefined).map((o) => o.id)).toEqual([]);
  expect(golf('green').length).toBe(18);
  expect(golf('green').filter((g) => g.ring.length < 20)).toEqual([]);
});

test('no fairway, green or water is near an ellipse or a rectangle', () => {
  const shapes = [...golf('fairway'), ...golf('green'), ...water].map(({ id, ring }) => ({
    id,
    stray: strayFromEllipse(ring),
    share: shareOfBox(ring),
  }));
  expect(shapes.filter((s) => s.stray < 0.03)).toEqual([]);
  expect(shapes.filter((s) => s.share > 0.9)).toEqual([]);
});

test('greens, tees and fairways of different holes do not overlap, nor do greens and bunkers', () => {
  const polygon = (ring: Ring) => ({ outer: ring, inner: [] });
  const short = [...golf('green'), ...golf('tee'), ...golf('fairway')];
  const shared = short.flatMap((a, i) =>
    [...short.slice(i + 1).filter((b) => b.hole !== a.hole), ...(a.tags.golf === 'green' ? golf('bunker') : [])]
      .filter((b) => sharedAreaSqM(polygon(a.ring), polygon(b.ring)) > 0)
      .map((b) => [a.id, b.id]),
  );
  expect(shared).toEqual([]);
});

test('ids are the course’s own', () => {
  expect(new Set(features.map((f) => f.id)).size).toBe(features.length);
  expect(features.filter((f) => /^(?:node|way|relation)\b|^\d+$/u.test(f.id))).toEqual([]);
});
