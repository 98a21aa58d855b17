import { union } from '../geometry/clip.ts';
import { insidePolygon, insideRing } from '../geometry/polygon.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Area } from './hole.ts';

/** Half the width of the ring that stands for "everywhere else": far beyond any ball. */
const FAR_M = 5000;

/** A mapped out-of-bounds area, as its feature gives it. */
export interface Bound {
  readonly id: string;
  readonly name?: string;
  readonly polygon: Polygon;
}

/**
 * What is out of bounds. An area is out and its inner rings are in; but areas that hold any of the places of play (this hole's tee,
 * its green) are the boundary themselves: outside all of them is out, and so is what is cut out of them. `boundaries` names those.
 */
export function outOfBounds(
  bounds: readonly Bound[],
  play: readonly PlanePoint[],
): { readonly areas: readonly Area[]; readonly boundaries: readonly string[] } {
  const holds = (b: Bound): boolean => play.some((p) => insidePolygon(p, b.polygon));
  const round = bounds.filter(holds);
  const areas: Area[] = bounds
    .filter((b) => !round.includes(b))
    .map((b) => ({ id: b.id, surface: 'out', ...(b.name === undefined ? {} : { name: b.name }), polygon: b.polygon }));
  const [first] = round;
  if (first === undefined) return { areas, boundaries: [] };

  const inside = round.length === 1 ? [first.polygon] : union(round.map((b) => b.polygon));
  const named = { id: first.id, surface: 'out' as const, ...(first.name === undefined ? {} : { name: first.name }) };
  areas.push({ ...named, polygon: { outer: farRing(play), inner: outermost(inside) } });
  for (const piece of inside)
    for (const hole of piece.inner) areas.push({ ...named, polygon: { outer: hole, inner: [] } });
  return { areas, boundaries: round.map((b) => b.id) };
}

/** Outer rings of the pieces that lie in no other piece's cut-out ring (those in one are left out with it). */
const outermost = (pieces: readonly Polygon[]): Polygon['outer'][] =>
  pieces
    .filter(
      (p) => !pieces.some((q) => q.inner.some((ring) => p.outer[0] !== undefined && insideRing(p.outer[0], ring))),
    )
    .map((p) => p.outer);

function farRing(play: readonly PlanePoint[]): Polygon['outer'] {
  const { eastM, northM } = play[0] ?? { eastM: 0, northM: 0 };
  return [
    { eastM: eastM - FAR_M, northM: northM - FAR_M },
    { eastM: eastM + FAR_M, northM: northM - FAR_M },
    { eastM: eastM + FAR_M, northM: northM + FAR_M },
    { eastM: eastM - FAR_M, northM: northM + FAR_M },
  ];
}
