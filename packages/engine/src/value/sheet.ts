import type { Room } from '../kernel/room.ts';
import type { Runs } from './arsenal.ts';
import type { Fate } from './fate.ts';
import type { Flow } from './flow.ts';
import type { Blur, Grid, Patch } from './blur.ts';
import { pyramidShape, type Width } from './pyramid.ts';
import { layerBytes, RunLayer, together, type CellsOf, type LayerPlan } from './runLayer.ts';
import { turnOf, type Middle } from './lattice.ts';
import { SURFACES } from '../quantity/lies.ts';
import { cellAt, FAIRWAY, GREEN, RECOVERY, ROUGH, TEE, type Box, type Raster } from './raster.ts';

/** In `only`: cells with several surfaces or with one in part, and cells without anything dry. */
export const MIXED = 254;
export const NOT_DRY = 255;

/** Square cells over the ground: of which kind each is, what a ball at rest there costs, and what one that pitches there does. */
export class Sheet {
  readonly grid: Grid;
  /** From the flag, metres: written by `flagAt`. */
  readonly distanceM: Float32Array;
  /** About the middle of the meshes: metres, and the part of a turn. */
  readonly radiusM: Float32Array;
  readonly turn: Float32Array;
  /** Shares of the surfaces that a ball can be played or putted from, by raster code; only those that occur. */
  readonly share: ReadonlyMap<number, Float32Array>;
  /** Shares of balls that are played again from before, and that are lifted ("wet"). */
  readonly outShare: Float32Array;
  readonly wetShare: Float32Array;
  /** The code of the surface that covers the whole cell; `MIXED` where there are others beside it, `NOT_DRY` where nothing is dry. */
  readonly only: Uint8Array;
  /** Strokes from the dry part of a cell, times its share: written by the field. */
  readonly strokes: Float64Array;
  /** The part of them that is over the baseline, which stays where it is when the flag is moved; NaN where it is not known. */
  readonly over: Float32Array;
  /** By run class; `undefined` where no stroke reads this sheet. Empty until `lay` makes them. */
  layers: readonly (RunLayer | undefined)[] = [];
  private readonly plans: readonly (LayerPlan | undefined)[];

  constructor(
    box: Box,
    cellM: number,
    widths: readonly Width[],
    raster: Raster,
    fates: readonly Fate[],
    classes: readonly Runs[],
    flow: Flow,
    narrowest: (runClass: number) => number,
    middle: Middle,
  ) {
    const columns = Math.round((box.u1 - box.u0) / cellM);
    const rows = Math.round((box.v1 - box.v0) / cellM);
    this.grid = { u0: box.u0 + cellM / 2, v0: box.v0 + cellM / 2, stepM: cellM, columns, rows };
    const n = columns * rows;
    this.strokes = new Float64Array(n);
    this.over = new Float32Array(n).fill(NaN);
    this.only = new Uint8Array(n).fill(NOT_DRY);
    this.outShare = new Float32Array(n);
    this.wetShare = new Float32Array(n);
    this.distanceM = new Float32Array(n);
    this.radiusM = new Float32Array(n);
    this.turn = new Float32Array(n);
    for (let r = 0, i = 0; r < rows; r++) {
      const y = this.grid.v0 + r * cellM - middle.v;
      for (let c = 0; c < columns; c++, i++) {
        const x = this.grid.u0 + c * cellM - middle.u;
        this.radiusM[i] = Math.sqrt(x * x + y * y);
        this.turn[i] = turnOf(x, y);
      }
    }
    const { share, main } = this.take(raster, fates);
    this.share = share;
    const ways = waysOf(this.grid, main, flow);
    const cells = new Map<number, CellsOf>();
    const cellsOf = (per: number): CellsOf => {
      const known = cells.get(per);
      if (known !== undefined) return known;
      const more = ((per - 1) * cellM) / 2;
      const grid = {
        u0: this.grid.u0 + more,
        v0: this.grid.v0 + more,
        stepM: per * cellM,
        columns: Math.floor(columns / per),
        rows: Math.floor(rows / per),
      };
      const made = { grid, per };
      cells.set(per, made);
      return made;
    };
    this.plans = classes.map((runsM, k) => {
      const narrowestAt = narrowest(k);
      if (narrowestAt >= widths.length) return undefined;
      const per = together(cellM, widths[narrowestAt]!.sdM);
      // a pyramid's first step may double its cells, not more
      const first = widths.findLastIndex((w, l) => l <= narrowestAt && w.stepM <= 2 * per * cellM);
      const stops = k === 0 ? undefined : stopsOf(this.grid, main, runsM, ways);
      const on = cellsOf(per);
      const shape = pyramidShape(on.grid, widths.slice(first));
      return { sheet: this.grid, cells: on, runsM, stops, first, shape };
    });
  }

  /** The cells whose middles lie in a box. */
  patchIn({ u0, v0, u1, v1 }: Box): Patch {
    const { grid } = this;
    return {
      c0: Math.ceil((u0 - grid.u0) / grid.stepM),
      c1: Math.floor((u1 - grid.u0) / grid.stepM),
      r0: Math.ceil((v0 - grid.v0) / grid.stepM),
      r1: Math.floor((v1 - grid.v0) / grid.stepM),
    };
  }

  /** Forgets what is over the baseline, but for the cells in a box. */
  forgetOver(known: Box | undefined): void {
    const { columns, rows } = this.grid;
    const { c0, c1, r0, r1 } = known === undefined ? { c0: 0, c1: -1, r0: 0, r1: -1 } : this.patchIn(known);
    for (let r = 0; r < rows; r++) {
      const [from, to] = r < r0 || r > r1 ? [columns, columns] : [c0, c1 + 1];
      this.over.fill(NaN, r * columns, r * columns + from);
      this.over.fill(NaN, r * columns + to, (r + 1) * columns);
    }
  }

  /** Bytes of a room that the layers will take. */
  bytes(): number {
    const shares = [this.outShare, this.wetShare];
    return this.plans.reduce((sum, plan) => sum + (plan === undefined ? 0 : layerBytes(plan, shares)), 0);
  }

  /** Makes the layers, in a room. */
  lay(room: Room, blur: Blur): void {
    this.layers = this.plans.map((plan) => plan && new RunLayer(plan, this.outShare, this.wetShare, room, blur));
  }

  /** Shares of every cell from the raster, and the commonest surface in each. */
  private take(raster: Raster, fates: readonly Fate[]): { share: Map<number, Float32Array>; main: Uint8Array } {
    const { u0, v0, stepM: cellM, columns, rows } = this.grid;
    const share = new Map<number, Float32Array>();
    const main = new Uint8Array(columns * rows);
    const per = Math.max(1, Math.round(cellM / raster.stepM));
    const sample = (cell0: number, k: number): number => cell0 + ((k + 0.5) / per - 0.5) * cellM;
    // raster columns of all samples along a row, and where the raster rows of a row of cells begin
    const across = Int32Array.from({ length: columns * per }, (_, k) => {
      const u = sample(u0 + Math.floor(k / per) * cellM, k % per);
      return cellAt(raster, u, raster.box.v0) % raster.columns;
    });
    const down = new Int32Array(per);
    const counts = new Int32Array(SURFACES.length);
    const { surface } = raster;
    const put = (i: number, code: number, x: number): void => {
      const { played, replayed, lifted } = fates[code]!;
      this.wetShare[i]! += lifted * x;
      this.outShare[i]! += replayed * x;
      if (played === 0) return;
      let s = share.get(code);
      if (s === undefined) share.set(code, (s = new Float32Array(columns * rows)));
      s[i] = played * x;
      this.only[i] = s[i] === 1 ? code : MIXED;
    };
    for (let r = 0, i = 0; r < rows; r++) {
      for (let b = 0; b < per; b++) down[b] = cellAt(raster, raster.box.u0, sample(v0 + r * cellM, b));
      for (let c = 0; c < columns; c++, i++) {
        const one = surface[down[0]! + across[c * per]!]!;
        let same = 0;
        for (let b = 0; b < per; b++)
          for (let a = c * per; a < (c + 1) * per; a++) if (surface[down[b]! + across[a]!] === one) same++;
        if (same === per * per) {
          main[i] = one === TEE ? FAIRWAY : one;
          put(i, main[i]!, 1);
          continue;
        }
        counts.fill(0);
        for (let b = 0; b < per; b++)
          for (let a = c * per; a < (c + 1) * per; a++) counts[surface[down[b]! + across[a]!]!]!++;
        counts[FAIRWAY]! += counts[TEE]!;
        counts[TEE] = 0;
        for (let code = 0; code < counts.length; code++) {
          if (counts[code] === 0) continue;
          if (counts[code]! > counts[main[i]!]!) main[i] = code;
          put(i, code, counts[code]! / (per * per));
        }
      }
    }
    return { share, main };
  }

  /** Measures every cell's distance from the flag. */
  flagAt(u: number, v: number): void {
    const { u0, v0, stepM, columns, rows } = this.grid;
    for (let r = 0, i = 0; r < rows; r++) {
      const y = v0 + r * stepM - v;
      for (let c = 0; c < columns; c++, i++) {
        const x = u0 + c * stepM - u;
        this.distanceM[i] = Math.sqrt(x * x + y * y);
      }
    }
  }

  /** Notes that strokes have changed: they can be read after `refresh`. */
  changed(patch: Patch): void {
    for (const layer of this.layers) layer?.changed(patch);
  }

  /** Blurs what has changed, for each run class up to its widest width that will be read: place in this sheet's widths, -1 for none. */
  refresh(widest: (runClass: number) => number): void {
    this.layers.forEach((layer, k) => {
      if (layer === undefined) return;
      const to = widest(k);
      if (to >= 0) layer.refresh(this.strokes, Math.min(layer.levels.length - 1, Math.max(0, to - layer.first)));
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

/**
 * The cell where a ball that pitches in each stops, running on the way the hole goes. Runs are whole cells, rounded differently from
 * cell to cell so that any four side by side run the right length in the mean. A ball that would leave the sheet stops at its edge.
 */
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
      const overC = (((c + 2 * r) & 3) + 0.5) / 4;
      const overR = (((2 * c + r) & 3) + 0.5) / 4;
      const column = Math.min(columns - 1, Math.max(0, Math.floor(c + cells * ways[2 * i]! + overC)));
      const row = Math.min(rows - 1, Math.max(0, Math.floor(r + cells * ways[2 * i + 1]! + overR)));
      stops[i] = row * columns + column;
    }
  }
  return stops;
}
