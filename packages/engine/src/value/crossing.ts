import type { Grid } from './blur.ts';
import type { Field } from './field.ts';
import { BARE, cellAt, FAIRWAY, GREEN, OUT, PENALTY, TEE } from './raster.ts';

/** Back on the line: whole metres up to this. Beside: so many places at two club-lengths. */
const BACK_M = 150;
const BESIDE_M = 2.3;
const BESIDE_PLACES = 16;

/** Where a ball last crossed into a penalty area. */
export interface Crossing {
  readonly u: number;
  readonly v: number;
  readonly red: boolean;
}

/** A place where a ball may be dropped, and the lie there. */
export type Offer = (u: number, v: number, lie: number) => void;

/** Walks back along the lines of wet balls. Steps are a cell of the raster, longer where all is water for some way round. */
export class WalkBack {
  private readonly field: Field;
  private readonly grid: Grid;
  /** Whole metres from each cell of the wide sheet that are water in every direction. */
  private readonly waterM: Uint8Array;

  constructor(field: Field) {
    this.field = field;
    this.grid = field.wide.grid;
    this.waterM = waterAround(field.wide.wetShare, this.grid);
  }

  /** Where a ball that lies wet at a place last crossed the edge, coming along a unit direction. `undefined` if the water reaches the map's edge. */
  from(u: number, v: number, du: number, dv: number): Crossing | undefined {
    const { raster, ground } = this.field;
    const { box, stepM, surface } = raster;
    const { u0, v0, columns } = this.grid;
    const area = raster.area[cellAt(raster, u, v)]!;
    const red = area > BARE && ground.areas[area]!.red === true;
    let x = u;
    let y = v;
    for (let t = stepM; ;) {
      x = u - t * du;
      y = v - t * dv;
      if (x < box.u0 || x > box.u1 || y < box.v0 || y > box.v1) return undefined;
      if (surface[cellAt(raster, x, y)] !== PENALTY) break;
      t += this.waterM[Math.round(y - v0) * columns + Math.round(x - u0)]! || stepM;
    }
    return { u: x + (stepM / 2) * du, v: y + (stepM / 2) * dv, red };
  }
}

/** For each square metre how many whole metres one may go from it, any way, and stay in squares that are water all over. */
function waterAround(wetShare: Float32Array, grid: Grid): Uint8Array {
  const { columns, rows } = grid;
  // steps, a king's, to the nearest square with something dry; the sheet's edge counts as dry
  const steps = new Uint8Array(columns * rows);
  const relax = (i: number, a: number, b: number, c: number, d: number): void => {
    const least = Math.min(steps[i + a]!, steps[i + b]!, steps[i + c]!, steps[i + d]!) + 1;
    if (least < steps[i]!) steps[i] = least;
  };
  for (let r = 1; r < rows - 1; r++)
    for (let i = r * columns + 1; i < (r + 1) * columns - 1; i++) {
      if (wetShare[i] !== 1) continue;
      steps[i] = 250;
      relax(i, -1, -columns, -columns - 1, -columns + 1);
    }
  for (let r = rows - 2; r > 0; r--)
    for (let i = (r + 1) * columns - 2; i > r * columns; i--)
      if (steps[i]! > 0) relax(i, 1, columns, columns - 1, columns + 1);
  return steps.map((s) => Math.max(0, s - 1));
}

/** Offers every dry place in bounds where a ball that crossed there may be dropped. */
export function dropsFrom(field: Field, { u, v, red }: Crossing, take: Offer): void {
  const { raster, arsenal, flag } = field;
  const distanceM = field.distanceM(u, v);
  const offer = (du: number, dv: number): void => {
    if (du < raster.box.u0 || du > raster.box.u1 || dv < raster.box.v0 || dv > raster.box.v1) return;
    const code = raster.surface[cellAt(raster, du, dv)]!;
    const lie = code === TEE ? FAIRWAY : code;
    if (lie === PENALTY || lie === OUT || (lie !== GREEN && !arsenal.has(lie))) return;
    take(du, dv, lie);
  };
  const awayU = distanceM > 0 ? (u - flag.u) / distanceM : 0;
  const awayV = distanceM > 0 ? (v - flag.v) / distanceM : -1;
  for (let t = 1; t <= BACK_M; t++) offer(u + t * awayU, v + t * awayV);
  if (!red) return;
  for (let k = 0; k < BESIDE_PLACES; k++) {
    const turn = (2 * Math.PI * k) / BESIDE_PLACES;
    const du = u + BESIDE_M * Math.sin(turn);
    const dv = v + BESIDE_M * Math.cos(turn);
    if (field.distanceM(du, dv) >= distanceM) offer(du, dv);
  }
}

/** Strokes from where a ball may be dropped. */
export const strokesFromDrop = (field: Field, u: number, v: number, lie: number): number =>
  lie === GREEN ? field.strokesOnGround(u, v) : field.strokesFrom(lie, u, v);
