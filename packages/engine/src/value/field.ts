import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import { arsenalOf, type Arsenal } from './arsenal.ts';
import { baselineAt, baselineOf, type Baseline } from './baseline.ts';
import { Lattice, type Node } from './lattice.ts';
import { playFrame, type PlayFrame } from './playFrame.ts';
import { puttsAt, puttsOf, type Putts } from './putts.ts';
import { NEAR_WIDTHS, Pyramid, pyramidShape, WIDE_WIDTHS, type Patch, type PyramidShape } from './pyramid.ts';
import { BUNKER, cellAt, FAIRWAY, GREEN, OUT, paint, PENALTY, RECOVERY, ROUGH, TEE, type Raster } from './raster.ts';

/** Half the side of the square round the flag that is kept in quarter metres, and how far inside it a cloud must be to be read there. */
const NEAR_M = 32;
const NEAR_READ_M = NEAR_M - 4.5;
const NEAR_CELL_M = 0.25;
/** Ground kept beyond the raster's edge, as it is at the edge, so that wide clouds read right there: two of the widest. */
const PAD_M = 32;

/** Base cells over the ground: what share of each is of which kind, and the pyramids of what a ball there costs. */
export interface Sheet {
  readonly shape: PyramidShape;
  readonly columns: number;
  readonly rows: number;
  readonly distanceM: Float32Array;
  /** Shares of the surfaces that a ball can be played from, or putted on, by raster code; only those that occur. */
  readonly share: ReadonlyMap<number, Float32Array>;
  /** Strokes from dry, playable ground, times its share of the cell. */
  readonly dry: Pyramid;
  /** The same from sand alone: a ball that pitches in sand stays there. Only kept for players whose balls run on. */
  readonly sand: Pyramid | undefined;
  /** Shares that never change: out of bounds or unplayable, in a penalty area, and what a pitched ball runs on (green, fairway, rough). */
  readonly out: Pyramid | undefined;
  readonly wet: Pyramid | undefined;
  readonly runsOn: readonly (Pyramid | undefined)[];
}

/**
 * Expected strokes from everywhere on a hole, while they are being worked out and after: one smooth lattice of strokes for each lie,
 * and their mixture over the ground as it lies, ready to be averaged under any cloud of balls.
 */
export class Field {
  readonly ground: HoleGround;
  readonly player: PlayerModel;
  readonly frame: PlayFrame;
  readonly raster: Raster;
  readonly arsenal: Arsenal;
  readonly putts: Putts;
  readonly baseline: Baseline;
  readonly lattices: ReadonlyMap<number, Lattice>;
  readonly near: Sheet;
  readonly wide: Sheet;

  constructor(ground: HoleGround, player: PlayerModel) {
    this.ground = ground;
    this.player = player;
    this.frame = playFrame(ground.ball, ground.flag);
    const painted = paint(ground, this.frame);
    this.arsenal = arsenalOf(player, painted.surface.includes(PENALTY));
    this.raster = this.arsenal.has(RECOVERY) ? painted : unmappedAsRough(painted);
    this.putts = puttsOf(player.putting);
    this.baseline = baselineOf(this.arsenal, this.putts, this.raster);
    const runs = player.options.some((o) => Object.values(o.byLie).some((p) => !p.rest));
    const { u0, u1, v0, v1 } = this.raster.box;
    const padded = { u0: u0 - PAD_M, u1: u1 + PAD_M, v0: v0 - PAD_M, v1: v1 + PAD_M };
    this.wide = this.sheet(padded, 1, WIDE_WIDTHS, runs);
    const square = { u0: -NEAR_M, v0: -NEAR_M, u1: NEAR_M, v1: NEAR_M };
    this.near = this.sheet(square, NEAR_CELL_M, NEAR_WIDTHS, runs);
    this.lattices = this.makeLattices();
  }

  /** What a lie is played as: a ball in a tee area as fairway, on unstated lies not at all. */
  private lieOf(code: number): number {
    return code === TEE ? FAIRWAY : code;
  }

  private sheet(
    box: { u0: number; v0: number; u1: number; v1: number },
    cellM: number,
    widths: typeof WIDE_WIDTHS,
    runs: boolean,
  ): Sheet {
    const columns = Math.round((box.u1 - box.u0) / cellM);
    const rows = Math.round((box.v1 - box.v0) / cellM);
    const n = columns * rows;
    const base = { u0: box.u0 + cellM / 2, v0: box.v0 + cellM / 2, stepM: cellM, columns, rows };
    const shape = pyramidShape(base, widths);
    const per = Math.max(1, Math.round(cellM / this.raster.stepM));
    const share = new Map<number, Float32Array>();
    const masses = {
      out: new Float64Array(n),
      wet: new Float64Array(n),
      runs: [0, 1, 2].map(() => new Float64Array(n)),
    };
    const distanceM = new Float32Array(n);
    const part = 1 / (per * per);
    for (let i = 0; i < n; i++) {
      const u = base.u0 + (i % columns) * cellM;
      const v = base.v0 + Math.floor(i / columns) * cellM;
      distanceM[i] = Math.hypot(u, v);
      for (let a = 0; a < per; a++) {
        for (let b = 0; b < per; b++) {
          const at = cellAt(this.raster, u + ((a + 0.5) / per - 0.5) * cellM, v + ((b + 0.5) / per - 0.5) * cellM);
          const code = this.lieOf(this.raster.surface[at]!);
          if (code === PENALTY) masses.wet[i]! += part;
          else if (code === OUT || (code !== GREEN && !this.arsenal.has(code))) masses.out[i]! += part;
          else {
            let s = share.get(code);
            if (s === undefined) share.set(code, (s = new Float32Array(n)));
            s[i]! += part;
          }
          if (code === GREEN) masses.runs[0]![i]! += part;
          else if (code === FAIRWAY) masses.runs[1]![i]! += part;
          else if (code === ROUGH || code === RECOVERY) masses.runs[2]![i]! += part;
        }
      }
    }
    const fixed = (cells: Float64Array, kept = true): Pyramid | undefined => {
      if (!kept || cells.every((x) => x === 0)) return undefined;
      const p = new Pyramid(shape);
      p.cells.set(cells);
      p.refresh();
      return p;
    };
    return {
      shape,
      columns,
      rows,
      distanceM,
      share,
      dry: new Pyramid(shape),
      sand: runs && share.has(BUNKER) ? new Pyramid(shape) : undefined,
      out: fixed(masses.out),
      wet: fixed(masses.wet),
      runsOn: masses.runs.map((m) => fixed(m, runs)),
    };
  }

  private makeLattices(): Map<number, Lattice> {
    const lattices = new Map<number, Lattice>();
    for (const code of this.arsenal.keys()) {
      if (code === TEE) continue;
      const lattice = new Lattice(this.raster.box);
      let any = false;
      const mark = (sheet: Sheet, stride: number): void => {
        const cells = code === PENALTY ? sheet.wet?.cells : sheet.share.get(code);
        if (cells === undefined) return;
        const { u0, v0, stepM } = sheet.shape.base;
        for (let r = 0; r < sheet.rows; r += stride) {
          for (let c = 0; c < sheet.columns; c += stride) {
            if (cells[r * sheet.columns + c] === 0) continue;
            any = true;
            lattice.need(u0 + c * stepM, v0 + r * stepM);
          }
        }
      };
      mark(this.wide, 1);
      mark(this.near, 2);
      if (any) lattices.set(code, lattice);
    }
    return lattices;
  }

  nodes(): Node[] {
    const all = [...this.lattices].flatMap(([lie, lattice]) => lattice.nodes(lie));
    return all.sort((a, b) => a.distanceM - b.distanceM);
  }

  baselineFrom(lie: number, distanceM: number): number {
    return baselineAt(this.baseline.strokes.get(lie)!, distanceM);
  }

  /** Strokes from a lie at a place of the play frame; NaN for a lie that this player cannot play. */
  strokesFrom(lie: number, u: number, v: number): number {
    const table = this.baseline.strokes.get(lie);
    if (table === undefined) return NaN;
    const base = baselineAt(table, Math.hypot(u, v));
    const lattice = this.lattices.get(lie);
    return lattice === undefined ? base : base + lattice.at(u, v);
  }

  /** Strokes from a dry place as painted: putts, or strokes from its lie. NaN when wet, out, or unplayable. */
  strokesOnGround(u: number, v: number): number {
    const code = this.lieOf(this.raster.surface[cellAt(this.raster, u, v)]!);
    if (code === GREEN) return puttsAt(this.putts, Math.hypot(u, v));
    return code === PENALTY || code === OUT ? NaN : this.strokesFrom(code, u, v);
  }

  /** Takes the lattices' values into the pyramids, for ground between two distances from the flag. */
  refresh(fromM: number, toM: number): void {
    if (fromM < NEAR_M * Math.SQRT2) {
      this.compose(this.near, fromM, toM);
      this.averageNear();
    }
    this.compose(this.wide, fromM - 1, toM + 1);
  }

  private compose(sheet: Sheet, fromM: number, toM: number): void {
    const { u0, v0, stepM } = sheet.shape.base;
    const wide = sheet === this.wide;
    let [c0, c1, r0, r1] = [sheet.columns, -1, sheet.rows, -1];
    const parts = [...sheet.share];
    const low = Math.max(0, Math.floor((-toM - v0) / stepM));
    const high = Math.min(sheet.rows - 1, Math.ceil((toM - v0) / stepM));
    for (let r = low; r <= high; r++) {
      const v = v0 + r * stepM;
      for (let c = 0; c < sheet.columns; c++) {
        const i = r * sheet.columns + c;
        const d = sheet.distanceM[i]!;
        if (d < fromM || d > toM) continue;
        const u = u0 + c * stepM;
        if (c < c0) c0 = c;
        if (c > c1) c1 = c;
        if (r < r0) r0 = r;
        if (r > r1) r1 = r;
        if (wide && Math.abs(u) < NEAR_M && Math.abs(v) < NEAR_M) continue;
        let sum = 0;
        for (const [code, share] of parts) {
          const s = share[i]!;
          if (s === 0) continue;
          const strokes = code === GREEN ? puttsAt(this.putts, d) : this.strokesFrom(code, u, v);
          sum += s * strokes;
          if (code === BUNKER && sheet.sand) sheet.sand.cells[i] = s * strokes;
        }
        sheet.dry.cells[i] = sum;
      }
    }
    if (c1 < 0) return;
    const patch: Patch = { c0, c1, r0, r1 };
    sheet.dry.refresh(patch);
    sheet.sand?.refresh(patch);
  }

  /** Wide cells within the near square are means of its cells. */
  private averageNear(): void {
    const per = Math.round(1 / NEAR_CELL_M);
    const { u0, v0 } = this.wide.shape.base;
    for (let a = 0; a < 2 * NEAR_M; a++) {
      const r = Math.round(-NEAR_M + 0.5 - v0) + a;
      if (r < 0 || r >= this.wide.rows) continue;
      for (let b = 0; b < 2 * NEAR_M; b++) {
        const c = Math.round(-NEAR_M + 0.5 - u0) + b;
        if (c < 0 || c >= this.wide.columns) continue;
        const to = r * this.wide.columns + c;
        const from = a * per * this.near.columns + b * per;
        this.wide.dry.cells[to] = meanOf(this.near.dry.cells, from, per, this.near.columns);
        if (this.wide.sand && this.near.sand) {
          this.wide.sand.cells[to] = meanOf(this.near.sand.cells, from, per, this.near.columns);
        }
      }
    }
  }
}

function meanOf(cells: Float64Array, from: number, per: number, columns: number): number {
  let sum = 0;
  for (let y = 0; y < per; y++) for (let x = 0; x < per; x++) sum += cells[from + y * columns + x]!;
  return sum / (per * per);
}

/** For a player with no stroke from recovery, unmapped ground is rough. */
function unmappedAsRough(r: Raster): Raster {
  const surface = r.surface.map((code, i) => (r.area[i] === -2 ? ROUGH : code));
  return { ...r, surface };
}

/** Whether clouds at a place are read from the sheet round the flag. */
export const isNear = (u: number, v: number): boolean =>
  u > -NEAR_READ_M && u < NEAR_READ_M && v > -NEAR_READ_M && v < NEAR_READ_M;
