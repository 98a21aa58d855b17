import type { HoleGround, PlanePoint, Ring, Surface } from '@leeway/engine';

/** The ground as square cells: the topmost area of each cell's centre, painted in the order of `ground.areas`. */
export interface Raster {
  readonly cellM: number;
  readonly westM: number;
  readonly southM: number;
  readonly columns: number;
  readonly rows: number;
  /** Index in `ground.areas`, row by row from the south; -1 where nothing is painted. */
  readonly area: Int16Array;
}

/** Beyond the mapped ground the raster goes on by this much; past its edge a point reads as the nearest cell. */
const MARGIN_M = 40;

/** Paints the areas one over another, each by even-odd scan lines through the cells' centres. */
export function rasterOf(ground: HoleGround, cellM: number): Raster {
  const points: PlanePoint[] = [ground.ball, ground.flag, ...ground.line];
  for (const a of ground.areas) if (a.surface !== 'out') points.push(...a.polygon.outer);
  const east = points.map((p) => p.eastM);
  const north = points.map((p) => p.northM);
  const westM = Math.floor(Math.min(...east) - MARGIN_M);
  const southM = Math.floor(Math.min(...north) - MARGIN_M);
  const columns = Math.ceil((Math.max(...east) + MARGIN_M - westM) / cellM);
  const rows = Math.ceil((Math.max(...north) + MARGIN_M - southM) / cellM);
  const raster = { cellM, westM, southM, columns, rows, area: new Int16Array(columns * rows).fill(-1) };
  ground.areas.forEach((a, index) => paint(raster, [a.polygon.outer, ...a.polygon.inner], index));
  return raster;
}

function paint(r: Raster, rings: readonly Ring[], index: number): void {
  for (let row = 0; row < r.rows; row++) {
    const y = r.southM + (row + 0.5) * r.cellM;
    const crossings = rings.flatMap((ring) => crossingsAt(ring, y)).toSorted((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const first = Math.max(0, Math.ceil((crossings[k]! - r.westM) / r.cellM - 0.5));
      const last = Math.min(r.columns - 1, Math.floor((crossings[k + 1]! - r.westM) / r.cellM - 0.5));
      if (first <= last) r.area.fill(index, row * r.columns + first, row * r.columns + last + 1);
    }
  }
}

function crossingsAt(ring: Ring, y: number): number[] {
  const found: number[] = [];
  let a = ring.at(-1)!;
  for (const b of ring) {
    if (a.northM > y !== b.northM > y) {
      found.push(a.eastM + ((y - a.northM) / (b.northM - a.northM)) * (b.eastM - a.eastM));
    }
    a = b;
  }
  return found;
}

/** The cell that holds a point; past the edge, the nearest. */
export function cellOf(r: Raster, eastM: number, northM: number): number {
  const column = Math.min(r.columns - 1, Math.max(0, Math.floor((eastM - r.westM) / r.cellM)));
  const row = Math.min(r.rows - 1, Math.max(0, Math.floor((northM - r.southM) / r.cellM)));
  return row * r.columns + column;
}

/** What a cell is; bare ground is rough. */
export function surfaceOfCell(ground: HoleGround, r: Raster, cell: number): Surface {
  return ground.areas[r.area[cell]!]?.surface ?? 'rough';
}
