import type { Field } from './field.ts';
import { BARE, cellAt, FAIRWAY, GREEN, OUT, PENALTY, TEE } from './raster.ts';

/**
 * What a ball in a penalty area costs beyond the stroke, by where it lies and the way it was travelling. The ball last crossed the edge
 * at X, found by walking back along its line. Relief (Rule 17.1, one penalty stroke): back on the line from the hole through X, here
 * at whole metres up to 150; from a red area also within two club-lengths of X, no nearer the hole (sixteen places at 2.3 m).
 * X depends on the landing place and the direction alone, so one table serves every stroke of the hole.
 */
const DIRECTIONS = 120;
const CELL_M = 3;
const LEVELS = 8;
const BACK_M = 150;
const BESIDE_M = 2.3;
const BESIDE_PLACES = 16;
/** A drop's strokes that move by less are left as they are. */
const SAME_STROKES = 2e-5;

/** A place where a ball can have crossed an edge, and the dry places in bounds where it may be dropped. */
interface Crossing {
  readonly u: number;
  readonly v: number;
  readonly distanceM: number;
  readonly dropU: Float64Array;
  readonly dropV: Float64Array;
  readonly dropLie: Uint8Array;
  /** Strokes from the cheapest drop; NaN where there is none. */
  strokes: number;
}

/**
 * The cost of being wet, averaged over cells that double in size: wet share, wet share with a legal drop, and that times the strokes
 * from it. A border of empty cells surrounds them.
 */
interface WetLevel {
  readonly cellM: number;
  readonly columns: number;
  readonly rows: number;
  /** Three figures a cell, cell after cell, direction after direction. */
  readonly sums: Float32Array;
}

export class Relief {
  private readonly field: Field;
  private readonly u0: number;
  private readonly v0: number;
  private readonly levels: readonly WetLevel[];
  private readonly wetColumn: Int32Array;
  private readonly wetRow: Int32Array;
  private readonly wetShare: Float64Array;
  private readonly wetU: Float64Array;
  private readonly wetV: Float64Array;
  /** Strokes from the drop that the table holds for each direction and wet cell; NaN for none. */
  private readonly held: Float32Array;
  /** Index of the crossing for each direction and wet cell; -1 where the walk back found no edge. */
  private readonly crossingOf: Int32Array;
  private readonly crossings: Crossing[] = [];
  /** Written by `at`: wet balls with a legal drop as a share of all wet ones, and the mean strokes from it. */
  legal = 0;
  strokes = 0;

  constructor(field: Field) {
    this.field = field;
    const wet = wetCellsOf(field);
    this.u0 = wet.u0;
    this.v0 = wet.v0;
    this.levels = Array.from({ length: LEVELS }, (_, k) => {
      const columns = Math.ceil(wet.columns / 2 ** k) + 2;
      const rows = Math.ceil(wet.rows / 2 ** k) + 2;
      return { cellM: CELL_M * 2 ** k, columns, rows, sums: new Float32Array(3 * DIRECTIONS * columns * rows) };
    });
    this.wetColumn = Int32Array.from(wet.cells, (c) => c.cell % wet.columns);
    this.wetRow = Int32Array.from(wet.cells, (c) => Math.floor(c.cell / wet.columns));
    this.wetShare = Float64Array.from(wet.cells, (c) => c.share);
    this.wetU = Float64Array.from(wet.cells, (c) => c.u);
    this.wetV = Float64Array.from(wet.cells, (c) => c.v);
    this.crossingOf = new Int32Array(DIRECTIONS * wet.cells.length);
    this.held = new Float32Array(DIRECTIONS * wet.cells.length).fill(NaN);
    const known = new Map<string, number>();
    for (let d = 0; d < DIRECTIONS; d++) {
      const turn = (2 * Math.PI * d) / DIRECTIONS;
      wet.cells.forEach((c, i) => {
        const x = this.walkBack(c.u, c.v, Math.sin(turn), Math.cos(turn));
        this.add(d, i, 0, c.share);
        this.crossingOf[d * wet.cells.length + i] = x === undefined ? -1 : this.crossingAt(x.u, x.v, x.red, known);
      });
    }
  }

  /** Where a ball that lies wet at a place last crossed the edge, coming along a unit direction. `undefined` if the water reaches the map's edge. */
  walkBack(u: number, v: number, du: number, dv: number): { u: number; v: number; red: boolean } | undefined {
    const { raster, ground } = this.field;
    const step = raster.stepM;
    const first = cellAt(raster, u, v);
    const area = raster.area[first]!;
    const red = area > BARE && ground.areas[area]!.red === true;
    for (let t = step; ; t += step) {
      const x = u - t * du;
      const y = v - t * dv;
      if (x < raster.box.u0 || x > raster.box.u1 || y < raster.box.v0 || y > raster.box.v1) return undefined;
      if (raster.surface[cellAt(raster, x, y)] !== PENALTY)
        return { u: x + (step / 2) * du, v: y + (step / 2) * dv, red };
    }
  }

  private crossingAt(u: number, v: number, red: boolean, known: Map<string, number>): number {
    const key = `${Math.floor(u)} ${Math.floor(v)} ${red}`;
    const at = known.get(key);
    if (at !== undefined) return at;
    this.crossings.push(this.makeCrossing(u, v, red));
    known.set(key, this.crossings.length - 1);
    return this.crossings.length - 1;
  }

  private makeCrossing(u: number, v: number, red: boolean): Crossing {
    const distanceM = Math.hypot(u, v);
    const drops: { u: number; v: number; lie: number }[] = [];
    const offer = (du: number, dv: number): void => {
      const { raster, arsenal } = this.field;
      if (du < raster.box.u0 || du > raster.box.u1 || dv < raster.box.v0 || dv > raster.box.v1) return;
      const code = raster.surface[cellAt(raster, du, dv)]!;
      const lie = code === TEE ? FAIRWAY : code;
      if (lie === PENALTY || lie === OUT || (lie !== GREEN && !arsenal.has(lie))) return;
      drops.push({ u: du, v: dv, lie });
    };
    const au = distanceM > 0 ? u / distanceM : 0;
    const av = distanceM > 0 ? v / distanceM : -1;
    for (let t = 1; t <= BACK_M; t++) offer(u + t * au, v + t * av);
    if (red) {
      for (let k = 0; k < BESIDE_PLACES; k++) {
        const turn = (2 * Math.PI * k) / BESIDE_PLACES;
        const du = u + BESIDE_M * Math.sin(turn);
        const dv = v + BESIDE_M * Math.cos(turn);
        if (Math.hypot(du, dv) >= distanceM) offer(du, dv);
      }
    }
    return {
      u,
      v,
      distanceM,
      dropU: Float64Array.from(drops, (d) => d.u),
      dropV: Float64Array.from(drops, (d) => d.v),
      dropLie: Uint8Array.from(drops, (d) => d.lie),
      strokes: NaN,
    };
  }

  /** The cheapest drop from a crossing: where, and strokes from there; `undefined` without a legal one. */
  private cheapest(x: Crossing): { u: number; v: number; strokes: number } | undefined {
    let best = Infinity;
    let at = -1;
    for (let i = 0; i < x.dropU.length; i++) {
      const strokes = this.strokesFromDrop(x, i);
      if (strokes < best) {
        best = strokes;
        at = i;
      }
    }
    return at < 0 ? undefined : { u: x.dropU[at]!, v: x.dropV[at]!, strokes: best };
  }

  private strokesFromDrop(x: Crossing, i: number): number {
    const u = x.dropU[i]!;
    const v = x.dropV[i]!;
    const lie = x.dropLie[i]!;
    return lie === GREEN ? this.field.strokesOnGround(u, v) : this.field.strokesFrom(lie, u, v);
  }

  /** The cheapest relief for one ball, exactly; for prices that are shown. */
  relief(u: number, v: number, du: number, dv: number): { u: number; v: number; strokes: number } | undefined {
    const x = this.walkBack(u, v, du, dv);
    return x === undefined ? undefined : this.cheapest(this.makeCrossing(x.u, x.v, x.red));
  }

  /** Takes changed drops into the table, those of crossings between two distances from the flag priced afresh. */
  refresh(fromM: number, toM: number): void {
    for (const x of this.crossings) {
      if (Number.isNaN(x.strokes) || (x.distanceM >= fromM - BACK_M && x.distanceM <= toM)) {
        x.strokes = this.cheapest(x)?.strokes ?? NaN;
      }
    }
    const n = this.wetU.length;
    const plays = this.field.arsenal.has(PENALTY);
    for (let i = 0; i < n; i++) {
      const asItLies = plays ? this.field.strokesFrom(PENALTY, this.wetU[i]!, this.wetV[i]!) - 1 : Infinity;
      const share = this.wetShare[i]!;
      for (let d = 0; d < DIRECTIONS; d++) {
        const k = this.crossingOf[d * n + i]!;
        const dropped = k < 0 ? NaN : this.crossings[k]!.strokes;
        const strokes = dropped < asItLies ? dropped : plays ? asItLies : NaN;
        const held = this.held[d * n + i]!;
        if (Number.isNaN(strokes) || Math.abs(strokes - held) < SAME_STROKES) continue;
        this.held[d * n + i] = strokes;
        if (Number.isNaN(held)) this.add(d, i, 1, share);
        this.add(d, i, 2, share * (strokes - (Number.isNaN(held) ? 0 : held)));
      }
    }
  }

  /** Adds to one of a wet cell's three figures, at every level. */
  private add(direction: number, cell: number, figure: number, amount: number): void {
    const column = this.wetColumn[cell]!;
    const row = this.wetRow[cell]!;
    for (let l = 0; l < LEVELS; l++) {
      const { columns, rows, sums } = this.levels[l]!;
      const at = 3 * ((direction * rows + (row >> l) + 1) * columns + (column >> l) + 1);
      sums[at + figure]! += amount * 0.25 ** l;
    }
  }

  /**
   * The mean cost of the wet part of a cloud of a given width at a place, travelling along (du, dv), of any length: written to `legal`
   * and `strokes`. `legal` is 0 where the table knows of no water.
   */
  at(u: number, v: number, du: number, dv: number, sdM: number): void {
    const turn = Math.round(Math.atan2(du, dv) * (DIRECTIONS / (2 * Math.PI)));
    const direction = turn < 0 ? turn + DIRECTIONS : turn;
    for (let l = sdM < 2.1 ? 0 : sdM < 4.2 ? 1 : 2; l < LEVELS; l++) {
      const { cellM, columns, rows, sums } = this.levels[l]!;
      const x = (u - this.u0) / cellM + 0.5;
      const y = (v - this.v0) / cellM + 0.5;
      if (!(x >= 0 && y >= 0 && x < columns - 1 && y < rows - 1)) continue;
      const i = x | 0;
      const j = y | 0;
      const fx = x - i;
      const fy = y - j;
      const w11 = fx * fy;
      const w10 = fx - w11;
      const w01 = fy - w11;
      const w00 = 1 - fx - w01;
      const a = 3 * ((direction * rows + j) * columns + i);
      const b = a + 3 * columns;
      const wet = w00 * sums[a]! + w10 * sums[a + 3]! + w01 * sums[b]! + w11 * sums[b + 3]!;
      const legal = w00 * sums[a + 1]! + w10 * sums[a + 4]! + w01 * sums[b + 1]! + w11 * sums[b + 4]!;
      const strokes = w00 * sums[a + 2]! + w10 * sums[a + 5]! + w01 * sums[b + 2]! + w11 * sums[b + 5]!;
      if (wet > 1e-6) {
        this.legal = legal / wet;
        this.strokes = legal > 0 ? strokes / legal : 0;
        return;
      }
    }
    this.legal = 0;
    this.strokes = 0;
  }
}

interface WetCells {
  readonly u0: number;
  readonly v0: number;
  readonly columns: number;
  readonly rows: number;
  /** Cell number, share that is wet, and a wet place in it: the one nearest the middle of what is wet. */
  readonly cells: readonly { cell: number; share: number; u: number; v: number }[];
}

function wetCellsOf(field: Field): WetCells {
  const { raster } = field;
  const per = Math.round(CELL_M / raster.stepM);
  const columns = Math.ceil(raster.columns / per);
  const rows = Math.ceil(raster.rows / per);
  const cells: { cell: number; share: number; u: number; v: number }[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const wet: [number, number][] = [];
      for (let y = j * per; y < Math.min(raster.rows, (j + 1) * per); y++) {
        for (let x = i * per; x < Math.min(raster.columns, (i + 1) * per); x++) {
          if (raster.surface[y * raster.columns + x] === PENALTY) wet.push([x, y]);
        }
      }
      if (wet.length === 0) continue;
      const mx = wet.reduce((s, p) => s + p[0], 0) / wet.length;
      const my = wet.reduce((s, p) => s + p[1], 0) / wet.length;
      let best = wet[0]!;
      for (const p of wet) if (Math.hypot(p[0] - mx, p[1] - my) < Math.hypot(best[0] - mx, best[1] - my)) best = p;
      cells.push({
        cell: j * columns + i,
        share: wet.length / (per * per),
        u: raster.box.u0 + (best[0] + 0.5) * raster.stepM,
        v: raster.box.v0 + (best[1] + 0.5) * raster.stepM,
      });
    }
  }
  return { u0: raster.box.u0, v0: raster.box.v0, columns, rows, cells };
}
