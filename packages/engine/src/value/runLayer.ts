import { bytesOf, type Room } from '../kernel/room.ts';
import type { Runs } from './arsenal.ts';
import type { Blur, Grid, Patch } from './blur.ts';
import { LEVEL_FLOATS, writeLevel } from './level.ts';
import { note, Pyramid, pyramidBytes, type PyramidShape } from './pyramid.ts';

/** How much wider than a cell the narrowest width must be for the cells to be put together in fours. */
const WIDER_THAN_CELL = 2 * Math.SQRT2;

/** The cells of a sheet, put together two by two or four by four where nothing narrow is read. */
export interface CellsOf {
  readonly grid: Grid;
  /** Cells of the sheet along one of these. */
  readonly per: number;
}

/** A layer to be made: see `RunLayer`. */
export interface LayerPlan {
  readonly sheet: Grid;
  readonly cells: CellsOf;
  readonly runsM: Runs;
  readonly stops: Int32Array | undefined;
  readonly first: number;
  readonly shape: PyramidShape;
}

const occurs = (share: Float32Array): boolean => share.some((x) => x !== 0);

/** Bytes of a room that a layer will take. */
export function layerBytes({ shape }: LayerPlan, shares: readonly Float32Array[]): number {
  const pyramids = 1 + shares.filter(occurs).length;
  return pyramids * pyramidBytes(shape) + shape.grids.length * bytesOf(LEVEL_FLOATS);
}

/** How many cells along may be put together for a narrowest width. */
export function together(cellM: number, narrowestM: number): number {
  let per = 1;
  while (per < 4 && 2 * per * cellM * WIDER_THAN_CELL <= narrowestM * 1.0001) per *= 2;
  return per;
}

/**
 * What a ball of one run class costs by where it pitches: pyramids of strokes from dry ground and of the chances of being out and wet.
 * All are made only as far as they are read.
 */
export class RunLayer {
  readonly runsM: Runs;
  /** The sheet's widths begin here for this class: nothing narrower is read. */
  readonly first: number;
  /** Addresses of the levels' records, from `first` on. */
  readonly levels: readonly number[];
  /** For each cell of the sheet the one in which a ball that pitches there stops; `undefined` for balls that stop where they pitch. */
  private readonly stops: Int32Array | undefined;
  private readonly sheet: Grid;
  private readonly cells: CellsOf;
  private readonly dry: Pyramid;
  private readonly out: Pyramid | undefined;
  private readonly wet: Pyramid | undefined;
  /** Patches of the sheet whose strokes have changed since they were last taken. */
  private changes: Patch[] = [];

  constructor(plan: LayerPlan, outShare: Float32Array, wetShare: Float32Array, room: Room, blur: Blur) {
    const { sheet, cells, runsM, stops, first, shape } = plan;
    this.sheet = sheet;
    this.cells = cells;
    this.runsM = runsM;
    this.stops = stops;
    this.first = first;
    const fixed = (share: Float32Array): Pyramid | undefined => {
      if (!occurs(share)) return undefined;
      const p = new Pyramid(shape, room, blur);
      const { columns, rows } = cells.grid;
      this.take(share, p.cells, { c0: 0, c1: columns - 1, r0: 0, r1: rows - 1 });
      p.changed(filled(p.cells, columns));
      return p;
    };
    this.dry = new Pyramid(shape, room, blur);
    this.out = fixed(outShare);
    this.wet = fixed(wetShare);
    this.levels = shape.grids.map((g, k) =>
      writeLevel(room, g, this.dry.levels[k]!, this.out?.levels[k], this.wet?.levels[k]),
    );
  }

  /** Notes that strokes have changed in a patch of the sheet: they are taken when they are next read. */
  changed({ c0, c1, r0, r1 }: Patch): void {
    const more = this.stops === undefined ? 0 : Math.ceil(Math.max(...this.runsM) / this.sheet.stepM);
    const { per } = this.cells;
    const { columns, rows } = this.cells.grid;
    note(this.changes, {
      c0: Math.max(0, Math.floor((c0 - more) / per)),
      c1: Math.min(columns - 1, Math.floor((c1 + more) / per)),
      r0: Math.max(0, Math.floor((r0 - more) / per)),
      r1: Math.min(rows - 1, Math.floor((r1 + more) / per)),
    });
  }

  /** Takes what has changed and blurs it, up to a width: place in `levels`. */
  refresh(strokes: Float64Array, last: number): void {
    for (const patch of this.changes) {
      this.take(strokes, this.dry.cells, patch);
      this.dry.changed(patch);
    }
    this.changes = [];
    for (const p of [this.dry, this.out, this.wet]) p?.refresh(last);
  }

  /** Figures of the sheet's cells by where the ball pitches, for a patch of this layer's cells. */
  private take(from: Float32Array | Float64Array, to: Float32Array, { c0, c1, r0, r1 }: Patch): void {
    const { per, grid } = this.cells;
    const { stops } = this;
    const wide = this.sheet.columns;
    for (let r = r0; r <= r1; r++) {
      for (let c = c0, i = r * grid.columns + c0; c <= c1; c++, i++) {
        const first = r * per * wide + c * per;
        if (per === 1) to[i] = from[stops === undefined ? first : stops[first]!]!;
        else {
          let sum = 0;
          for (let y = first; y < first + per * wide; y += wide)
            for (let at = y; at < y + per; at++) sum += from[stops === undefined ? at : stops[at]!]!;
          to[i] = sum / (per * per);
        }
      }
    }
  }
}

/** The smallest patch that holds all cells that are not nought. */
function filled(cells: Float32Array, columns: number): Patch {
  const rows = cells.length / columns;
  let [c0, c1, r0, r1] = [columns - 1, 0, rows - 1, 0];
  for (let r = 0, i = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++, i++) {
      if (cells[i] === 0) continue;
      if (c < c0) c0 = c;
      if (c > c1) c1 = c;
      if (r < r0) r0 = r;
      r1 = r;
    }
  }
  return c0 > c1 ? { c0: 0, c1: 0, r0: 0, r1: 0 } : { c0, c1, r0, r1 };
}
