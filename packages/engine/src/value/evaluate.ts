import type { Weapon } from './arsenal.ts';
import type { Clouds } from './cloud.ts';
import type { Field } from './field.ts';
import type { Relief } from './relief.ts';
import type { Level } from './runLayer.ts';

/** Largest chance of having to play the same stroke again that the fixed point is trusted with. */
const MOST_REPLAYED = 0.97;
/** The widest cloud that is read from the sheet round the flag. */
const NEAR_ONLY = 5;
/** Wet balls of a cloud fewer than this are put together with the stroke's other few, and priced at their middle. */
const FEW = 4e-4;
const FEW_SD_M = 8;

/**
 * What a stroke costs: the mean over its clouds of what the ground there costs.
 * With A the mean of all costs that lead on and p the chance of playing from the same place again (out of bounds, no legal drop, or a
 * drop dearer than going back), always playing this stroke costs (1 + A + p) / (1 - p); a single stroke played before the best, with
 * V from here, costs 1 + A + p (1 + V). Both agree at the best stroke.
 */
export class Evaluator {
  readonly field: Field;
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
    const { alongM, acrossM, width, first } = clouds;
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
      const level = wide.levels[Math.max(0, k - NEAR_ONLY - wide.first)]!;
      const near = k <= NEAR_ONLY ? this.field.near.layers[w.runClass[p]!] : undefined;
      const from = first[p]!;
      const to = first[p + 1]!;
      if (near === undefined || k < near.first) {
        this.add(level, clouds, from, to, u, v, sin, cos, further, fromHere);
        continue;
      }
      const close = near.levels[k - near.first]!;
      for (let n = from; n < to; n++) {
        const a = alongM[n]! + further;
        const here = this.field.isNear(u + a * sin + acrossM[n]! * cos, v + a * cos - acrossM[n]! * sin)
          ? close
          : level;
        this.add(here, clouds, n, n + 1, u, v, sin, cos, further, fromHere);
      }
    }
    if (this.few > 0) {
      const x = this.fewU / this.few;
      const y = this.fewV / this.few;
      this.drown(this.few, x - u, y - v, x, y, FEW_SD_M, fromHere);
    }
  }

  /** Clouds of one part: dry ground leads on, out of bounds is replayed, and what is wet is either. Places beyond the grid read its edge. */
  private add(
    level: Level,
    clouds: Clouds,
    from: number,
    to: number,
    u: number,
    v: number,
    sin: number,
    cos: number,
    further: number,
    fromHere: number,
  ): void {
    const { weight, alongM, acrossM } = clouds;
    const { u0, v0, perM, columns, lastX, lastY, dry, out, wet } = level;
    let ahead = 0;
    let replayed = 0;
    for (let n = from; n < to; n++) {
      const a = alongM[n]! + further;
      const r = acrossM[n]!;
      const x = u + a * sin + r * cos;
      const y = v + a * cos - r * sin;
      let gx = (x - u0) * perM;
      let gy = (y - v0) * perM;
      gx = gx < 0 ? 0 : gx > lastX ? lastX : gx;
      gy = gy < 0 ? 0 : gy > lastY ? lastY : gy;
      const i = gx | 0;
      const j = gy | 0;
      const at = j * columns + i;
      const fx = gx - i;
      const fy = gy - j;
      const w = weight[n]!;
      // bilinear weights, shared by all that is read here
      const w11 = w * fx * fy;
      const w10 = w * fx - w11;
      const w01 = w * fy - w11;
      const w00 = w - w * fx - w01;
      ahead += w00 * dry[at]! + w10 * dry[at + 1]! + w01 * dry[at + columns]! + w11 * dry[at + columns + 1]!;
      if (out !== undefined) {
        replayed += w00 * out[at]! + w10 * out[at + 1]! + w01 * out[at + columns]! + w11 * out[at + columns + 1]!;
      }
      if (wet === undefined) continue;
      const drowned = w00 * wet[at]! + w10 * wet[at + 1]! + w01 * wet[at + columns]! + w11 * wet[at + columns + 1]!;
      if (drowned > FEW) this.drown(drowned, x - u, y - v, x, y, clouds.sdM[n]!, fromHere);
      else if (drowned > 0) {
        this.few += drowned;
        this.fewU += drowned * x;
        this.fewV += drowned * y;
      }
    }
    this.ahead += ahead;
    this.replayed += replayed;
  }

  private drown(wet: number, du: number, dv: number, x: number, y: number, sdM: number, fromHere: number): void {
    if (this.relief === undefined) return;
    this.relief.at(x, y, du, dv, sdM);
    const { legal, strokes } = this.relief;
    if (strokes < fromHere) {
      this.ahead += wet * legal * (1 + strokes);
      this.replayed += wet * (1 - legal);
    } else this.replayed += wet;
  }
}
