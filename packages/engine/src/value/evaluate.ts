import type { Weapon } from './arsenal.ts';
import { WIDTHS_M, type Clouds } from './cloud.ts';
import { isNear, type Field } from './field.ts';
import type { Relief } from './relief.ts';

/** Largest chance of having to play the same stroke again that the fixed point is trusted with. */
const MOST_REPLAYED = 0.97;
/** The widest cloud that is read from the sheet round the flag. */
const NEAR_ONLY = 5;

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
    const { count, weight, alongM, acrossM, width, part } = clouds;
    const { near, wide } = this.field;
    const sin = Math.sin(bearing);
    const cos = Math.cos(bearing);
    let ahead = 0;
    let replayed = 0;
    this.ahead = 0;
    this.replayed = 0;
    for (let n = 0; n < count; n++) {
      const a = alongM[n]!;
      const r = acrossM[n]!;
      const x = u + a * sin + r * cos;
      const y = v + a * cos - r * sin;
      const k = width[n]!;
      const close = k <= NEAR_ONLY && isNear(x, y);
      const sheet = close ? near : wide;
      const level = close ? k : k > NEAR_ONLY ? k - NEAR_ONLY : 0;
      const layer = sheet.layers[w.runClass[part[n]!]!]!;
      // bilinear weights, shared by all that is read here; places beyond the grid read its edge
      const grid = sheet.shape.grids[level]!;
      const { columns } = grid;
      let gx = (x - grid.u0) / grid.stepM;
      let gy = (y - grid.v0) / grid.stepM;
      gx = gx < 0 ? 0 : gx > columns - 1.000001 ? columns - 1.000001 : gx;
      gy = gy < 0 ? 0 : gy > grid.rows - 1.000001 ? grid.rows - 1.000001 : gy;
      const i = gx | 0;
      const j = gy | 0;
      const fx = gx - i;
      const fy = gy - j;
      const at = j * columns + i;
      const w00 = (1 - fx) * (1 - fy);
      const w10 = fx * (1 - fy);
      const w01 = (1 - fx) * fy;
      const w11 = fx * fy;
      const share = weight[n]!;
      const dry = layer.dry.levels[level]!;
      ahead += share * (w00 * dry[at]! + w10 * dry[at + 1]! + w01 * dry[at + columns]! + w11 * dry[at + columns + 1]!);
      if (layer.out !== undefined) {
        const out = layer.out.levels[level]!;
        replayed +=
          share * (w00 * out[at]! + w10 * out[at + 1]! + w01 * out[at + columns]! + w11 * out[at + columns + 1]!);
      }
      if (layer.wet !== undefined) {
        const wet = layer.wet.levels[level]!;
        const chance = w00 * wet[at]! + w10 * wet[at + 1]! + w01 * wet[at + columns]! + w11 * wet[at + columns + 1]!;
        if (chance > 1e-5) this.drown(share * chance, x, y, k, u, v, fromHere);
      }
    }
    this.ahead += ahead;
    this.replayed += replayed;
  }

  private drown(wet: number, x: number, y: number, width: number, u: number, v: number, fromHere: number): void {
    if (this.relief === undefined) return;
    const length = Math.hypot(x - u, y - v) || 1;
    this.relief.at(x, y, (x - u) / length, (y - v) / length, WIDTHS_M[width]!);
    const { legal, strokes } = this.relief;
    if (strokes < fromHere) {
      this.ahead += wet * legal * (1 + strokes);
      this.replayed += wet * (1 - legal);
    } else this.replayed += wet;
  }
}
