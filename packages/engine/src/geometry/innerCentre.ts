import type { PlanePoint } from '../quantity/points.ts';
import { areaSqM, boxOf, centroid, distanceToEdgeM, insidePolygon } from './polygon.ts';
import type { Polygon } from './polygon.ts';

interface Cell {
  readonly centre: PlanePoint;
  readonly halfM: number;
  /** Distance from the centre to the edge, negative outside. */
  readonly depthM: number;
  /** No point of the cell is deeper than this. */
  readonly mostM: number;
}

/** Cells looked at before the best so far is taken; reached only by shapes far from any mapped area. */
const MOST_CELLS = 4000;

/**
 * The point of a polygon that is farthest from its edge, to `toleranceM`: the centre of the largest circle that fits. Squares are
 * split, a level at a time, and dropped when even their corners cannot beat the best centre by the tolerance.
 */
export function innerCentre(polygon: Polygon, toleranceM = 0.05): PlanePoint {
  const box = boxOf(polygon.outer);
  const [widthM, heightM] = [box.eastM - box.westM, box.northM - box.southM];
  const sizeM = Math.min(widthM, heightM);
  const middle = centroid(polygon.outer);
  if (!(sizeM > 0) || areaSqM(polygon) <= 0) return middle;

  const look = (centre: PlanePoint, halfM: number): Cell => {
    const edgeM = distanceToEdgeM(centre, polygon);
    const depthM = insidePolygon(centre, polygon) ? edgeM : -edgeM;
    return { centre, halfM, depthM, mostM: depthM + halfM * Math.SQRT2 };
  };
  let best = look(middle, 0);
  const halfM = Math.max(sizeM / 2, Math.max(widthM, heightM) / 64);
  let open: Cell[] = [];
  for (let e = box.westM + halfM; e - halfM < box.eastM; e += 2 * halfM)
    for (let n = box.southM + halfM; n - halfM < box.northM; n += 2 * halfM)
      open.push(look({ eastM: e, northM: n }, halfM));

  for (let looked = open.length; open.length > 0 && looked < MOST_CELLS;) {
    for (const cell of open) if (cell.depthM > best.depthM) best = cell;
    const next: Cell[] = [];
    for (const cell of open) {
      if (cell.mostM - best.depthM <= toleranceM) continue;
      const quarterM = cell.halfM / 2;
      for (const [e, n] of [
        [-1, -1],
        [1, -1],
        [-1, 1],
        [1, 1],
      ] as const)
        next.push(
          look({ eastM: cell.centre.eastM + e * quarterM, northM: cell.centre.northM + n * quarterM }, quarterM),
        );
    }
    looked += next.length;
    open = next;
  }
  for (const cell of open) if (cell.depthM > best.depthM) best = cell;
  return best.centre;
}
