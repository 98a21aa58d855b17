import type { Weapon } from './arsenal.ts';
import { WIDTHS_M, type Clouds } from './cloud.ts';
import { isNear, type Field } from './field.ts';
import type { Relief } from './relief.ts';
import type { RunLayer } from './sheet.ts';

/** Largest chance of having to play the same stroke again that the fixed point is trusted with. */
const MOST_REPLAYED = 0.97;
/** The widest cloud that is read from the sheet round the flag. */
const NEAR_ONLY = 5;
/** Wet balls of a cloud fewer than this are put together with the stroke's other few, and priced at their middle. */
const FEW = 4e-4;
const FEW_WIDTH = WIDTHS_M.length - 3;

/**
 * What a stroke costs: the mean over its clouds of what the ground there costs.
 * With A the mean of all costs that lead on and p the chance of playing from the same place again (out of bounds, no legal drop, or a
 * drop dearer than going back), always playing this stroke costs (1 + A + p) / (1 - p); a single stroke played before the best, with
 * V from here, costs 1 + A + p (1 + V). Both agree at the best stroke.
 */
export class Evaluator {
  private readonly field: Field;
  private readonly relief: Relief | undefined;
  private ahead = 0;
  private replayed = 0;
  private few = 0;
  private fewU = 0;
  private fewV = 0;

  constructor(field: Field, relief: Relief | undefined) {
    this.field = field;
    this.relief = relief;
  }

  /** Cost of always playing this stroke from (u, v), bearing radians clockwise from the play frame's v axis. `fromHere`: V by the last sweep. */
  always(w: Weapon, clouds: Clouds, u: number, v: number, bearing: number, fromHere: number): number {
    this.sum(w, clouds, u, v, bearing, fromHere);
    const p = Math.min(MOST_REPLAYED, this.replayed);
    return (1 + this.ahead + p) / (1 - p);
  }

  /** Cost of playing it once and the best ever after. */
  once(w: Weapon, clouds: Clouds, u: number, v: number, bearing: number, fromHere: number): number {
    this.sum(w, clouds, u, v, bearing, fromHere);
    return 1 + this.ahead + this.replayed * (1 + fromHere);
  }

  private sum(w: Weapon, clouds: Clouds, u: number, v: number, bearing: number, fromHere: number): void {
    const { weight, alongM, acrossM, width, first } = clouds;
    const sin = Math.sin(bearing);
    const cos = Math.cos(bearing);
    this.ahead = 0;
    this.replayed = 0;
    this.few = 0;
    this.fewU = 0;
    this.fewV = 0;
    for (let p = 0; p < width.length; p++) {
      const k = width[p]!;
      const further = w.furtherM[p]!;
      const wide = this.field.wide.layers[w.runClass[p]!]!;
      const close = k <= NEAR_ONLY ? this.field.near.layers[w.runClass[p]!] : undefined;
      const near = close !== undefined && k >= close.first ? close : undefined;
      const level = Math.max(0, k - NEAR_ONLY - wide.first);
      for (let n = first[p]!; n < first[p + 1]!; n++) {
        const a = alongM[n]! + further;
        const x = u + a * sin + acrossM[n]! * cos;
        const y = v + a * cos - acrossM[n]! * sin;
        if (near !== undefined && isNear(x, y)) this.add(near, k - near.first, weight[n]!, x, y, k, u, v, fromHere);
        else this.add(wide, level, weight[n]!, x, y, k, u, v, fromHere);
      }
    }
    if (this.few > 0) {
      const x = this.fewU / this.few;
      const y = this.fewV / this.few;
      this.drown(this.few, x - u, y - v, x, y, FEW_WIDTH, fromHere);
    }
  }

  /** One cloud: dry ground leads on, out of bounds is replayed, and what is wet is either. */
  private add(
    layer: RunLayer,
    level: number,
    weight: number,
    x: number,
    y: number,
    width: number,
    u: number,
    v: number,
    fromHere: number,
  ): void {
    const dry = layer.dry.levels[level]!;
    const { u0, v0, stepM, columns, rows } = layer.dry.shape.grids[level]!;
    // bilinear weights, shared by all that is read here; places beyond the grid read its edge
    let gx = (x - u0) / stepM;
    let gy = (y - v0) / stepM;
    gx = gx < 0 ? 0 : gx > columns - 1.000001 ? columns - 1.000001 : gx;
    gy = gy < 0 ? 0 : gy > rows - 1.000001 ? rows - 1.000001 : gy;
    const i = gx | 0;
    const j = gy | 0;
    const fx = gx - i;
    const fy = gy - j;
    const at = j * columns + i;
    const w10 = fx * (1 - fy);
    const w01 = (1 - fx) * fy;
    const w11 = fx * fy;
    const w00 = 1 - fx - w01;
    this.ahead +=
      weight * (w00 * dry[at]! + w10 * dry[at + 1]! + w01 * dry[at + columns]! + w11 * dry[at + columns + 1]!);
    if (layer.out !== undefined) {
      const out = layer.out.levels[level]!;
      this.replayed +=
        weight * (w00 * out[at]! + w10 * out[at + 1]! + w01 * out[at + columns]! + w11 * out[at + columns + 1]!);
    }
    if (layer.wet === undefined) return;
    const wet = layer.wet.levels[level]!;
    const chance = w00 * wet[at]! + w10 * wet[at + 1]! + w01 * wet[at + columns]! + w11 * wet[at + columns + 1]!;
    const drowned = weight * chance;
    if (drowned > FEW) this.drown(drowned, x - u, y - v, x, y, width, fromHere);
    else if (drowned > 0) {
      this.few += drowned;
      this.fewU += drowned * x;
      this.fewV += drowned * y;
    }
  }

  private drown(wet: number, du: number, dv: number, x: number, y: number, width: number, fromHere: number): void {
    if (this.relief === undefined) return;
    this.relief.at(x, y, du, dv, WIDTHS_M[width]!);
    const { legal, strokes } = this.relief;
    if (strokes < fromHere) {
      this.ahead += wet * legal * (1 + strokes);
      this.replayed += wet * (1 - legal);
    } else this.replayed += wet;
  }
}
