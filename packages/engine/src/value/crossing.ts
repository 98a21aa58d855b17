import type { Grid } from './blur.ts';
import type { Field } from './field.ts';
import { fairwaysOf, inward, type Fairways } from './fairways.ts';
import { BARE, BUNKER, cellAt, FAIRWAY, GREEN, OUT, PENALTY, type Raster, TEE } from './raster.ts';

/** Back on the line: whole metres up to this. Beside: so many places at two club-lengths. */
export const BACK_M = 150;
const BESIDE_M = 2.3;
const BESIDE_PLACES = 16;
/** How far off the map a ball is followed back. */
const OFF_MAP_M = 300;

/**
 * Why a ball is lifted: it lies in a red or a yellow penalty area, out of bounds or lost, or where this player cannot play it (in sand, from which
 * it may be taken back for one stroke more, or elsewhere).
 */
export type Why = 'red' | 'yellow' | 'gone' | 'unplayable' | 'sand';
export const WHYS: readonly Why[] = ['red', 'yellow', 'gone', 'unplayable', 'sand'];

/** The place that relief is taken from: where a ball last crossed the edge of a penalty area or a boundary, or where it lies. */
export interface Crossing {
  readonly u: number;
  readonly v: number;
  readonly why: Why;
}

/** A place where a ball may be dropped, the lie there, and penalty strokes beyond the first. */
export type Offer = (u: number, v: number, lie: number, more: number) => void;

/** Walks back along the lines of lifted balls. Steps are a cell of the raster, longer where all is water for some way round. */
export class WalkBack {
  private readonly field: Field;
  private readonly grid: Grid;
  /** Whole metres from each cell of the wide sheet that are water in every direction. */
  private readonly waterM: Uint8Array;
  /** The same for out of bounds, where a ball crosses that edge. */
  private readonly outM: Uint8Array | undefined;

  constructor(field: Field) {
    this.field = field;
    this.grid = field.wide.grid;
    const { fates, raster, wide } = field;
    const waterOnly = fates.every(({ lifted }, code) => lifted > 0 === (code === PENALTY));
    this.waterM = around(waterOnly ? wide.wetShare : wholly(raster, PENALTY, this.grid), this.grid);
    this.outM = fates[OUT]!.lifted > 0 ? around(wholly(raster, OUT, this.grid), this.grid) : undefined;
  }

  /** What relief is taken from for a ball at a place that came along a unit direction. `undefined` if water or out of bounds reaches the map's edge. */
  from(u: number, v: number, du: number, dv: number): Crossing | undefined {
    const { raster, ground } = this.field;
    const { box, stepM, surface } = raster;
    const { u0, v0, columns } = this.grid;
    const cell = cellAt(raster, u, v);
    const code = surface[cell]!;
    const area = raster.area[cell]!;
    if (code !== PENALTY && code !== OUT) {
      return { u, v, why: this.field.fates[code]!.played > 0 ? 'gone' : code === BUNKER ? 'sand' : 'unplayable' };
    }
    const far = code === OUT ? this.outM! : this.waterM;
    const why = code === OUT ? 'gone' : area > BARE && ground.areas[area]!.red === true ? 'red' : 'yellow';
    let x = u;
    let y = v;
    let entered = false;
    for (let t = stepM; ;) {
      x = u - t * du;
      y = v - t * dv;
      if (x < box.u0 || x > box.u1 || y < box.v0 || y > box.v1) {
        // a ball may have flown off the map; one that comes from beyond it did not
        if (entered || t > OFF_MAP_M) return undefined;
        t += stepM;
        continue;
      }
      entered = true;
      if (surface[cellAt(raster, x, y)] !== code) break;
      t += far[Math.round(y - v0) * columns + Math.round(x - u0)]! || stepM;
    }
    return { u: x + (stepM / 2) * du, v: y + (stepM / 2) * dv, why };
  }
}

/** Squares of a metre that hold nothing but one surface: 1 for these. */
function wholly(raster: Raster, code: number, grid: Grid): Float32Array {
  const { columns, rows } = grid;
  const { box, stepM } = raster;
  const square = Float32Array.from({ length: columns * rows }, (_, i) => {
    const u = grid.u0 + (i % columns);
    const v = grid.v0 + Math.floor(i / columns);
    return u > box.u0 && u < box.u1 && v > box.v0 && v < box.v1 ? 1 : 0;
  });
  for (let y = 0, i = 0; y < raster.rows; y++) {
    const row = Math.floor(box.v0 + (y + 0.5) * stepM - grid.v0 + 0.5) * columns;
    for (let x = 0; x < raster.columns; x++, i++) {
      if (raster.surface[i] !== code) square[row + Math.floor(box.u0 + (x + 0.5) * stepM - grid.u0 + 0.5)] = 0;
    }
  }
  return square;
}

/** For each square metre how many whole metres one may go from it, any way, and stay in squares that are wholly so. */
function around(share: Float32Array, grid: Grid): Uint8Array {
  const { columns, rows } = grid;
  // steps, a king's, to the nearest square with something dry; the sheet's edge counts as dry
  const steps = new Uint8Array(columns * rows);
  const relax = (i: number, a: number, b: number, c: number, d: number): void => {
    const least = Math.min(steps[i + a]!, steps[i + b]!, steps[i + c]!, steps[i + d]!) + 1;
    if (least < steps[i]!) steps[i] = least;
  };
  for (let r = 1; r < rows - 1; r++)
    for (let i = r * columns + 1; i < (r + 1) * columns - 1; i++) {
      if (share[i] !== 1) continue;
      steps[i] = 250;
      relax(i, -1, -columns, -columns - 1, -columns + 1);
    }
  for (let r = rows - 2; r > 0; r--)
    for (let i = (r + 1) * columns - 2; i > r * columns; i--)
      if (steps[i]! > 0) relax(i, 1, columns, columns - 1, columns + 1);
  return steps.map((s) => Math.max(0, s - 1));
}

/** Offers the places of relief, of a field as its flag stands. */
export class Drops {
  private readonly field: Field;
  private readonly fairways: Fairways | undefined;

  constructor(field: Field) {
    this.field = field;
    this.fairways = field.fates[OUT]!.lifted > 0 ? fairwaysOf(field) : undefined;
  }

  /** Every place in bounds that this player can play from and where a ball may be dropped that is lifted for this reason. */
  offer({ u, v, why }: Crossing, take: Offer): void {
    const { field } = this;
    const distanceM = field.distanceM(u, v);
    const offer = (du: number, dv: number, more: number): void => {
      const lie = lieAt(field, du, dv);
      if (lie !== undefined) take(du, dv, lie, more);
    };
    if (why === 'gone') {
      for (const [du, dv] of this.fairways === undefined ? [] : inward(this.fairways, field, u, v, BESIDE_M))
        offer(du, dv, 1);
      return;
    }
    const awayU = distanceM > 0 ? (u - field.flag.u) / distanceM : 0;
    const awayV = distanceM > 0 ? (v - field.flag.v) / distanceM : -1;
    const more = why === 'sand' ? 1 : 0;
    for (let t = 1; t <= BACK_M; t++) offer(u + t * awayU, v + t * awayV, more);
    if (why === 'yellow' || why === 'sand') return;
    besides(field, u, v, (du, dv) => offer(du, dv, 0));
  }
}

/** The places two club-lengths round a place that are no nearer the flag. */
export function besides(field: Field, u: number, v: number, take: (u: number, v: number) => void): void {
  const distanceM = field.distanceM(u, v);
  for (let k = 0; k < BESIDE_PLACES; k++) {
    const turn = (2 * Math.PI * k) / BESIDE_PLACES;
    const du = u + BESIDE_M * Math.sin(turn);
    const dv = v + BESIDE_M * Math.cos(turn);
    if (field.distanceM(du, dv) >= distanceM) take(du, dv);
  }
}

/** The lie of a ball dropped at a place, as a raster code; `undefined` where it may not be dropped or could not be played. */
export function lieAt({ raster, arsenal }: Field, u: number, v: number): number | undefined {
  if (u < raster.box.u0 || u > raster.box.u1 || v < raster.box.v0 || v > raster.box.v1) return undefined;
  const code = raster.surface[cellAt(raster, u, v)]!;
  const lie = code === TEE ? FAIRWAY : code;
  if (lie === PENALTY || lie === OUT) return undefined;
  return lie === GREEN || arsenal.has(lie) ? lie : undefined;
}

/** Strokes from where a ball may be dropped. */
export const strokesFromDrop = (field: Field, u: number, v: number, lie: number): number =>
  lie === GREEN ? field.strokesOnGround(u, v) : field.strokesFrom(lie, u, v);
