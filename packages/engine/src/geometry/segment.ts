import type { PlanePoint } from '../quantity/points.ts';

export const distanceM = (a: PlanePoint, b: PlanePoint): number => Math.hypot(b.eastM - a.eastM, b.northM - a.northM);

/** The point at the share `t` (0 to 1) of the way from `a` to `b`. */
export const between = (a: PlanePoint, b: PlanePoint, t: number): PlanePoint => ({
  eastM: a.eastM + (b.eastM - a.eastM) * t,
  northM: a.northM + (b.northM - a.northM) * t,
});

/** Share of the way from `a` to `b` at which the segment is nearest to `p`, from 0 to 1. */
export function nearestShare(p: PlanePoint, a: PlanePoint, b: PlanePoint): number {
  const [alongE, alongN] = [b.eastM - a.eastM, b.northM - a.northM];
  const lengthSq = alongE * alongE + alongN * alongN;
  if (lengthSq === 0) return 0;
  return Math.min(1, Math.max(0, ((p.eastM - a.eastM) * alongE + (p.northM - a.northM) * alongN) / lengthSq));
}

/** Distance in metres from a point to a segment. */
export const distanceToSegmentM = (p: PlanePoint, a: PlanePoint, b: PlanePoint): number =>
  distanceM(p, between(a, b, nearestShare(p, a, b)));

/** Length of an open line in metres. */
export const lengthM = (line: readonly PlanePoint[]): number =>
  line.reduce((sum, p, i) => {
    const prev = line[i - 1];
    return prev === undefined ? 0 : sum + distanceM(prev, p);
  }, 0);

/** Distance in metres from a point to an open line; to its only vertex when it has one; infinite for none. */
export function distanceToLineM(p: PlanePoint, line: readonly PlanePoint[]): number {
  let nearest = Infinity;
  let prev = line[0];
  for (const q of line) {
    nearest = Math.min(nearest, distanceToSegmentM(p, prev ?? q, q));
    prev = q;
  }
  return nearest;
}

/** Distance along an open line, in metres from its start, at which it is nearest to a point. */
export function alongLineM(p: PlanePoint, line: readonly PlanePoint[]): number {
  let [nearest, best, walked] = [Infinity, 0, 0];
  let prev = line[0];
  for (const q of line) {
    if (prev === undefined) continue;
    const share = nearestShare(p, prev, q);
    const away = distanceM(p, between(prev, q, share));
    const step = distanceM(prev, q);
    if (away < nearest) [nearest, best] = [away, walked + share * step];
    walked += step;
    prev = q;
  }
  return best;
}

/** The point of an open line at a distance along it from its start, held at its ends. */
export function pointAlong(line: readonly PlanePoint[], atM: number): PlanePoint | undefined {
  let left = Math.max(0, atM);
  let prev = line[0];
  for (const q of line) {
    if (prev === undefined) continue;
    const step = distanceM(prev, q);
    if (left <= step && step > 0) return between(prev, q, left / step);
    left -= step;
    prev = q;
  }
  return prev;
}

/** Do two segments touch or cross? Shared ends count. */
export function segmentsMeet(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  const [sideC, sideD] = [side(a, b, c), side(a, b, d)];
  const [sideA, sideB] = [side(c, d, a), side(c, d, b)];
  if (sideC !== sideD && sideA !== sideB && sideC * sideD <= 0 && sideA * sideB <= 0) return true;
  return (
    (sideC === 0 && within(a, b, c)) ||
    (sideD === 0 && within(a, b, d)) ||
    (sideA === 0 && within(c, d, a)) ||
    (sideB === 0 && within(c, d, b))
  );
}

/** 1 when `p` lies left of the line from `a` to `b`, -1 right of it, 0 on it. */
const side = (a: PlanePoint, b: PlanePoint, p: PlanePoint): number =>
  Math.sign((b.eastM - a.eastM) * (p.northM - a.northM) - (p.eastM - a.eastM) * (b.northM - a.northM));

const within = (a: PlanePoint, b: PlanePoint, p: PlanePoint): boolean =>
  p.eastM >= Math.min(a.eastM, b.eastM) &&
  p.eastM <= Math.max(a.eastM, b.eastM) &&
  p.northM >= Math.min(a.northM, b.northM) &&
  p.northM <= Math.max(a.northM, b.northM);
