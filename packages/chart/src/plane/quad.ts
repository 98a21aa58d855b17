import type { Xy } from '../marks.ts';

/** Four corners of a box, turned or not, in order round it. */
export type Quad = readonly [Xy, Xy, Xy, Xy];

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const quadOf = (r: Rect): Quad => [
  { x: r.left, y: r.top },
  { x: r.right, y: r.top },
  { x: r.right, y: r.bottom },
  { x: r.left, y: r.bottom },
];

export const grown = (r: Rect, by: number): Rect => ({
  left: r.left - by,
  top: r.top - by,
  right: r.right + by,
  bottom: r.bottom + by,
});

export const inRect = (p: Xy, r: Rect): boolean => p.x >= r.left && p.x <= r.right && p.y >= r.top && p.y <= r.bottom;

/** Do two boxes overlap? By separating axes: two convex shapes are apart when some side of one has the other wholly beyond it. */
export const quadsMeet = (a: Quad, b: Quad): boolean => !apart(a, b) && !apart(b, a);

function apart(a: Quad, b: Quad): boolean {
  for (let i = 0; i < 4; i++) {
    const p = a[i] ?? a[0];
    const q = a[(i + 1) % 4] ?? a[0];
    const [nx, ny] = [q.y - p.y, p.x - q.x];
    const reach = (c: Xy): number => (c.x - p.x) * nx + (c.y - p.y) * ny;
    const mine = a.map(reach);
    const theirs = b.map(reach);
    if (Math.max(...theirs) <= Math.min(...mine) || Math.min(...theirs) >= Math.max(...mine)) return true;
  }
  return false;
}

/** A box with each side moved outwards. */
export function widened(quad: Quad, by: number): Quad {
  const [a, b, , d] = quad;
  const [across, down] = [unit(a, b), unit(a, d)];
  const moved = (p: Xy, x: number, y: number): Xy => ({
    x: p.x + by * (x * across.x + y * down.x),
    y: p.y + by * (x * across.y + y * down.y),
  });
  return [moved(quad[0], -1, -1), moved(quad[1], 1, -1), moved(quad[2], 1, 1), moved(quad[3], -1, 1)];
}

function unit(from: Xy, to: Xy): Xy {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** Is a place inside a box or on its edge? */
export function inQuad(p: Xy, quad: Quad): boolean {
  let [left, right] = [false, false];
  for (let i = 0; i < 4; i++) {
    const a = quad[i] ?? quad[0];
    const b = quad[(i + 1) % 4] ?? quad[0];
    const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    if (side > 1e-9) left = true;
    if (side < -1e-9) right = true;
  }
  return !(left && right);
}
