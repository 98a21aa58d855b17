import { areaSqM, boxesMeet, boxOf } from '../geometry/polygon.ts';
import { ringInside } from '../geometry/rings.ts';
import type { Surface } from '../quantity/lies.ts';
import type { Area } from './hole.ts';

/** Paint order of the surfaces, lowest first. */
const PAINT: readonly Surface[] = ['rough', 'recovery', 'fairway', 'green', 'tee', 'bunker', 'penalty', 'out'];

/** An area this much of another's size fills it, and is no island in it. */
const FILLS = 0.999;

/**
 * Areas in the order in which they are painted, lowest first: rough, trees and scrub, fairway, green, tee, bunker, water, and out of
 * bounds over all. An area other than water that lies wholly inside the outer ring of a water area is an island: it is painted over
 * that water, in the same order, and water wholly on the island over the island in turn. Equals keep the order they came in.
 */
export function inPaintOrder(areas: readonly Area[]): Area[] {
  const sized = areas.map((area, at) => ({
    area,
    at,
    sizeSqM: areaSqM(area.polygon),
    box: boxOf(area.polygon.outer),
    level: 0,
  }));
  const placed: (typeof sized)[number][] = [];
  for (const inner of sized.toSorted((a, b) => b.sizeSqM - a.sizeSqM)) {
    for (const outer of placed) {
      const rises = isWater(outer.area) && !isWater(inner.area) ? outer.level + 1 : outer.level;
      if (rises <= inner.level || isWater(outer.area) === isWater(inner.area)) continue;
      if (inner.sizeSqM > FILLS * outer.sizeSqM || !boxesMeet(inner.box, outer.box)) continue;
      if (ringInside(inner.area.polygon.outer, outer.area.polygon.outer)) inner.level = rises;
    }
    if (inner.area.surface !== 'out') placed.push(inner);
  }
  const paint = (s: (typeof sized)[number]): number => (s.area.surface === 'out' ? Infinity : s.level);
  const compare = (a: number, b: number): number => (a < b ? -1 : a > b ? 1 : 0);
  return sized
    .toSorted((a, b) => compare(paint(a), paint(b)) || rank(a.area) - rank(b.area) || a.at - b.at)
    .map((s) => s.area);
}

const isWater = (area: Area): boolean => area.surface === 'penalty';
const rank = (area: Area): number => PAINT.indexOf(area.surface);
