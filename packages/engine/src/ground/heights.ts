import type { Box } from '../geometry/polygon.ts';
import type { PlanePoint } from '../quantity/points.ts';

/** Heights of the ground of one hole, metres above any level: a square mesh of the hole's plane, row after row from the south-west corner. */
export interface Heights {
  readonly westM: number;
  readonly southM: number;
  readonly stepM: number;
  readonly columns: number;
  readonly rows: number;
  readonly heightM: Float32Array;
  readonly from: 'spot heights' | 'raster';
}

/** A height that is known at a place. */
export interface SpotHeight {
  readonly at: PlanePoint;
  readonly heightM: number;
}

/** Mesh of the heights of a hole. */
const STEP_M = 10;
/** Fewer spot heights than this are no ground. */
export const LEAST_SPOTS = 3;
/** A place has its height from so many spots, those nearest to it. */
const NEAREST = 12;
/** At a spot itself its own height counts, not a division by nought. */
const SPOT_M = 0.5;

/** Height at a place, straight between the nodes of the mesh and held at its edge. */
export function heightOn(h: Heights, eastM: number, northM: number): number {
  const x = Math.min(h.columns - 1, Math.max(0, (eastM - h.westM) / h.stepM));
  const y = Math.min(h.rows - 1, Math.max(0, (northM - h.southM) / h.stepM));
  const i = Math.min(h.columns - 2, Math.floor(x));
  const j = Math.min(h.rows - 2, Math.floor(y));
  const at = j * h.columns + i;
  const low = h.heightM[at]! + (x - i) * (h.heightM[at + 1]! - h.heightM[at]!);
  const up = at + h.columns;
  const high = h.heightM[up]! + (x - i) * (h.heightM[up + 1]! - h.heightM[up]!);
  return low + (y - j) * (high - low);
}

/** The mesh over a box; `undefined` where no height is known in it. Nodes without a height take those about them. */
export function heightsOver(
  box: Box,
  heightAt: (p: PlanePoint) => number | undefined,
  from: Heights['from'],
): Heights | undefined {
  const columns = Math.max(2, Math.ceil((box.eastM - box.westM) / STEP_M) + 1);
  const rows = Math.max(2, Math.ceil((box.northM - box.southM) / STEP_M) + 1);
  const heightM = Float32Array.from({ length: columns * rows }, (_, k) => {
    const at = {
      eastM: box.westM + (k % columns) * STEP_M,
      northM: box.southM + Math.floor(k / columns) * STEP_M,
    };
    return heightAt(at) ?? NaN;
  });
  if (heightM.every(Number.isNaN)) return undefined;
  while (heightM.some(Number.isNaN)) spread(heightM, columns);
  return { westM: box.westM, southM: box.southM, stepM: STEP_M, columns, rows, heightM, from };
}

/** Gives every unknown node that has known ones beside it their mean. */
function spread(heightM: Float32Array, columns: number): void {
  const before = heightM.slice();
  before.forEach((h, k) => {
    if (!Number.isNaN(h)) return;
    const c = k % columns;
    const beside = [c > 0 ? k - 1 : -1, c < columns - 1 ? k + 1 : -1, k - columns, k + columns];
    const known = beside.map((n) => before[n] ?? NaN).filter((x) => !Number.isNaN(x));
    if (known.length > 0) heightM[k] = known.reduce((a, b) => a + b, 0) / known.length;
  });
}

/** Ground through spot heights: the mean of the nearest twelve, each weighing as one over its distance squared (Shepard 1968). */
export function throughSpots(spots: readonly SpotHeight[]): (p: PlanePoint) => number {
  return (p) => {
    const near = spots
      .map(({ at, heightM }) => ({ heightM, awayM: Math.hypot(at.eastM - p.eastM, at.northM - p.northM) }))
      .toSorted((a, b) => a.awayM - b.awayM)
      .slice(0, NEAREST);
    const weights = near.map(({ awayM }) => 1 / Math.max(SPOT_M, awayM) ** 2);
    const total = weights.reduce((a, b) => a + b, 0);
    return near.reduce((sum, { heightM }, i) => sum + heightM * weights[i]!, 0) / total;
  };
}
