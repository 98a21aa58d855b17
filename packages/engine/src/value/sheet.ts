import type { Runs } from './arsenal.ts';
import type { Flow } from './flow.ts';
import { Blur, type Grid, type Patch } from './blur.ts';
import { Pyramid, pyramidShape, type Width } from './pyramid.ts';
import { cellAt, FAIRWAY, GREEN, OUT, PENALTY, RECOVERY, ROUGH, TEE, type Box, type Raster } from './raster.ts';

/** One width of a run class, ready to be read: bilinear samples on a grid, `perM` cells a metre from (u0, v0). */
export interface Level {
  readonly u0: number;
  readonly v0: number;
  readonly perM: number;
  readonly columns: number;
  /** The last places that can be read, in cells. */
  readonly lastX: number;
  readonly lastY: number;
  readonly dry: Float32Array;
  readonly out: Float32Array | undefined;
  readonly wet: Float32Array | undefined;
}

/** What a ball of one run class costs by where it pitches: pyramids of strokes from dry ground and of the chances of being out and wet. */
export interface RunLayer {
  readonly runsM: Runs;
  /** The sheet's widths begin here for this class: nothing narrower is read. */
  readonly first: number;
  /** For each cell the one in which a ball that pitches there stops; `undefined` for balls that stop where they pitch. */
  readonly stops: Int32Array | undefined;
  readonly dry: Pyramid;
  /** From `first` on. */
  readonly levels: readonly Level[];
}

/** Square cells over the ground: of which kind each is, what a ball at rest there costs, and what one that pitches there does. */
export class Sheet {
  readonly grid: Grid;
  readonly distanceM: Float32Array;
  /** Shares of the surfaces that a ball can be played or putted from, by raster code; only those that occur. */
  readonly share: ReadonlyMap<number, Float32Array>;
  /** Shares out of bounds (or unplayable), and in a penalty area. */
  readonly outShare: Float64Array;
  readonly wetShare: Float64Array;
  /** Strokes from the dry part of a cell, times its share: written by the field. */
  readonly strokes: Float64Array;
  private readonly blur: Blur;
  /** By run class; `undefined` where no stroke reads this sheet. */
  readonly layers: readonly (RunLayer | undefined)[];

  constructor(
    box: Box,
    cellM: number,
    widths: readonly Width[],
    raster: Raster,
    plays: (code: number) => boolean,
    classes: readonly Runs[],
    flow: Flow,
    narrowest: (runClass: number) => number,
  ) {
    const columns = Math.round((box.u1 - box.u0) / cellM);
    const rows = Math.round((box.v1 - box.v0) / cellM);
    this.grid = { u0: box.u0 + cellM / 2, v0: box.v0 + cellM / 2, stepM: cellM, columns, rows };
    this.blur = new Blur(this.grid);
    const n = columns * rows;
    this.strokes = new Float64Array(n);
    this.outShare = new Float64Array(n);
    this.wetShare = new Float64Array(n);
    this.distanceM = new Float32Array(n);
    const share = new Map<number, Float32Array>();
    const main = new Uint8Array(n);
    const per = Math.max(1, Math.round(cellM / raster.stepM));
    const part = 1 / (per * per);
    const counts = new Int32Array(16);
    const sample = (cell0: number, k: number): number => cell0 + ((k + 0.5) / per - 0.5) * cellM;
    // raster columns of all samples along a row
    const samples = Int32Array.from({ length: columns * per }, (_, k) => {
      const u = sample(this.grid.u0 + Math.floor(k / per) * cellM, k % per);
      return cellAt(raster, u, raster.box.v0) % raster.columns;
    });
    for (let i = 0; i < n; i++) {
      const c = i % columns;
      const u = this.grid.u0 + c * cellM;
      const v = this.grid.v0 + Math.floor(i / columns) * cellM;
      this.distanceM[i] = Math.sqrt(u * u + v * v);
      counts.fill(0);
      for (let b = 0; b < per; b++) {
        const at = cellAt(raster, raster.box.u0, sample(v, b));
        for (let a = 0; a < per; a++) counts[raster.surface[at + samples[c * per + a]!]!]!++;
      }
      counts[FAIRWAY]! += counts[TEE]!;
      counts[TEE] = 0;
      for (let code = 0; code < counts.length; code++) {
        const x = counts[code]! * part;
        if (x === 0) continue;
        if (x > counts[main[i]!]! * part) main[i] = code;
        if (code === PENALTY) this.wetShare[i] = x;
        else if (code === OUT || (code !== GREEN && !plays(code))) this.outShare[i]! += x;
        else {
          let s = share.get(code);
          if (s === undefined) share.set(code, (s = new Float32Array(n)));
          s[i] = x;
        }
      }
    }
    this.share = share;
    const ways = waysOf(this.grid, main, flow);
    this.layers = classes.map((runsM, k) => {
      if (narrowest(k) >= widths.length) return undefined;
      // a pyramid's first step may double its cells, not more
      const first = widths.findLastIndex((w, l) => l <= narrowest(k) && w.stepM <= 2 * cellM);
      return this.layer(runsM, k === 0 ? undefined : stopsOf(this.grid, main, runsM, ways), widths, first);
    });
  }

  private layer(runsM: Runs, stops: Int32Array | undefined, widths: readonly Width[], first: number): RunLayer {
    const shape = pyramidShape(this.grid, widths.slice(first));
    const fixed = (cells: Float64Array): Pyramid | undefined => {
      if (cells.every((x) => x === 0)) return undefined;
      const p = new Pyramid(shape, this.blur);
      for (let i = 0; i < cells.length; i++) p.cells[i] = cells[stops === undefined ? i : stops[i]!]!;
      p.changed();
      p.refresh();
      return p;
    };
    const dry = new Pyramid(shape, this.blur);
    const out = fixed(this.outShare);
    const wet = fixed(this.wetShare);
    const levels = shape.grids.map((g, k) => ({
      u0: g.u0,
      v0: g.v0,
      perM: 1 / g.stepM,
      columns: g.columns,
      lastX: g.columns - 1.000001,
      lastY: g.rows - 1.000001,
      dry: dry.levels[k]!,
      out: out?.levels[k],
      wet: wet?.levels[k],
    }));
    return { runsM, first, stops, dry, levels };
  }

  /** Takes changed strokes into every layer; they can be read after `refresh`. */
  changed(patch: Patch): void {
    const { columns, rows, stepM } = this.grid;
    for (const layer of this.layers) {
      if (layer === undefined) continue;
      const { runsM, stops, dry } = layer;
      const more = Math.ceil(Math.max(...runsM) / stepM);
      const c0 = Math.max(0, patch.c0 - more);
      const c1 = Math.min(columns - 1, patch.c1 + more);
      const r0 = Math.max(0, patch.r0 - more);
      const r1 = Math.min(rows - 1, patch.r1 + more);
      for (let r = r0; r <= r1; r++) {
        const end = r * columns + c1;
        if (stops === undefined) for (let i = r * columns + c0; i <= end; i++) dry.cells[i] = this.strokes[i]!;
        else for (let i = r * columns + c0; i <= end; i++) dry.cells[i] = this.strokes[stops[i]!]!;
      }
      dry.changed({ c0, c1, r0, r1 });
    }
  }

  /** Blurs what has changed, for each run class up to its widest width that will be read: place in this sheet's widths, -1 for none. */
  refresh(widest: (runClass: number) => number): void {
    this.layers.forEach((layer, k) => {
      if (layer === undefined) return;
      const last = layer.dry.levels.length - 1;
      const to = widest(k);
      if (to >= 0) layer.dry.refresh(Math.min(last, Math.max(0, to - layer.first)));
    });
  }
}

/** The way the hole goes at each cell that a ball runs on: across and on, cell after cell. */
function waysOf(grid: Grid, main: Uint8Array, flow: Flow): Float32Array {
  const ways = new Float32Array(2 * main.length);
  for (let r = 0, i = 0; r < grid.rows; r++) {
    for (let c = 0; c < grid.columns; c++, i++) {
      if (runPlace(main[i]!) < 0) continue;
      ways.set(flow(grid.u0 + c * grid.stepM, grid.v0 + r * grid.stepM), 2 * i);
    }
  }
  return ways;
}

/** Place in `Runs` of a surface; -1 for sand, water and out of bounds, where a ball stays. */
const runPlace = (code: number): number =>
  code === GREEN ? 0 : code === FAIRWAY ? 1 : code === ROUGH || code === RECOVERY ? 2 : -1;

/** The cell where a ball that pitches in each stops, running on the way the hole goes. One that would leave the sheet stops at its edge. */
function stopsOf(grid: Grid, main: Uint8Array, runsM: Runs, ways: Float32Array): Int32Array {
  const { columns, rows, stepM } = grid;
  const stops = new Int32Array(main.length);
  for (let r = 0, i = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++, i++) {
      const k = runPlace(main[i]!);
      if (k < 0) {
        stops[i] = i;
        continue;
      }
      const cells = runsM[k]! / stepM;
      const column = Math.min(columns - 1, Math.max(0, Math.round(c + cells * ways[2 * i]!)));
      const row = Math.min(rows - 1, Math.max(0, Math.round(r + cells * ways[2 * i + 1]!)));
      stops[i] = row * columns + column;
    }
  }
  return stops;
}
