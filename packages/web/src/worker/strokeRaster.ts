import type { PlanePoint } from '@leeway/engine';

/** Strokes over a hole's ground, written down on a grid: every metre east and north, from the lower left corner, row by row. */
export interface StrokeRaster {
  readonly corner: PlanePoint;
  readonly columns: number;
  readonly rows: number;
  /** What the ground is, as a figure a kind, in runs along the rows: kind, nodes, kind, nodes … `UNMAPPED` is ground without figures. */
  readonly kinds: readonly number[];
  /** For each mapped node the thousandths of a stroke by which it differs from the mapped node before it. */
  readonly thousandths: readonly number[];
}

export const UNMAPPED = -1;
const UNIT = 1000;

/** Writes down strokes over a box of a plane, by whole metres. `kindAt` tells kinds of ground apart. */
export function writeRaster(
  corner: PlanePoint,
  opposite: PlanePoint,
  strokesAt: (p: PlanePoint) => number,
  kindAt: (p: PlanePoint) => number,
): StrokeRaster {
  const columns = Math.ceil(opposite.eastM - corner.eastM) + 1;
  const rows = Math.ceil(opposite.northM - corner.northM) + 1;
  const [kinds, thousandths]: [number[], number[]] = [[], []];
  let before = 0;
  for (let i = 0; i < rows * columns; i++) {
    const at = { eastM: corner.eastM + (i % columns), northM: corner.northM + Math.floor(i / columns) };
    const kind = kindAt(at);
    if (kind === kinds.at(-2)) kinds[kinds.length - 1] = (kinds.at(-1) ?? 0) + 1;
    else kinds.push(kind, 1);
    if (kind === UNMAPPED) continue;
    const now = Math.round(strokesAt(at) * UNIT);
    thousandths.push(now - before);
    before = now;
  }
  return { corner, columns, rows, kinds, thousandths };
}

/** Reads strokes linearly between the nodes of the nearest one's kind, so that nothing blurs at a bank; `NaN` where nothing is written. */
export function rasterReader(raster: StrokeRaster): (p: PlanePoint) => number {
  const { corner, columns, rows } = raster;
  const { kinds, strokes } = unpacked(raster);
  return ({ eastM, northM }) => {
    const x = eastM - corner.eastM;
    const y = northM - corner.northM;
    if (!(x >= 0 && y >= 0 && x < columns - 1 && y < rows - 1)) return NaN;
    const [column, row] = [Math.floor(x), Math.floor(y)];
    const kind = kinds[Math.round(y) * columns + Math.round(x)];
    let [sum, weight] = [0, 0];
    for (const [dx, dy] of CORNERS) {
      const i = (row + dy) * columns + column + dx;
      if (kind === UNMAPPED || kinds[i] !== kind) continue;
      const w = Math.abs(column + 1 - dx - x) * Math.abs(row + 1 - dy - y);
      sum += w * (strokes[i] ?? NaN);
      weight += w;
    }
    return weight > 0 ? sum / weight : NaN;
  };
}

const CORNERS = [
  [0, 0],
  [1, 0],
  [0, 1],
  [1, 1],
] as const;

function unpacked({ columns, rows, kinds: runs, thousandths }: StrokeRaster): {
  readonly kinds: Int8Array;
  readonly strokes: Float32Array;
} {
  const kinds = new Int8Array(columns * rows);
  const strokes = new Float32Array(columns * rows);
  let [node, written, now] = [0, 0, 0];
  for (let run = 0; run < runs.length; run += 2) {
    const kind = runs[run] ?? UNMAPPED;
    const end = node + (runs[run + 1] ?? 0);
    for (; node < end; node++) {
      kinds[node] = kind;
      if (kind === UNMAPPED) continue;
      now += thousandths[written++] ?? 0;
      strokes[node] = now / UNIT;
    }
  }
  return { kinds, strokes };
}
