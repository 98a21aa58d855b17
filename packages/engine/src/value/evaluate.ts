import {
  SUM_AHEAD,
  SUM_FEW,
  SUM_FEW_ACROSS,
  SUM_FEW_ALONG,
  SUM_REPLAYED,
  SUM_WET,
  SUM_WET_COUNT,
  WET_ACROSS,
  WET_ALONG,
  WET_BYTES,
  WET_SD_M,
  WET_SHARE,
} from '../kernel/layout.ts';
import { shortSided, type Weapon } from './arsenal.ts';
import type { Clouds } from './cloud.ts';
import type { Field } from './field.ts';
import type { Relief } from './relief.ts';

/** Largest chance of having to play the same stroke again that the fixed point is trusted with. */
const MOST_REPLAYED = 0.97;
/** The few wet balls that are put together are priced as one cloud of this width. */
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
  private fewAlong = 0;
  private fewAcross = 0;

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

  private sum(asked: Weapon, rule: Clouds, u: number, v: number, bearing: number, fromHere: number): void {
    const { shelf, shortSide } = this.field;
    const w = asked.short === undefined ? asked : shortSided(asked, shortSide.at(u, v));
    const clouds = w === asked ? rule : rule === asked.fine ? w.fine : rule === asked.middle ? w.middle : w.coarse;
    const sin = Math.sin(bearing);
    const cos = Math.cos(bearing);
    this.ahead = 0;
    this.replayed = 0;
    this.few = 0;
    this.fewAlong = 0;
    this.fewAcross = 0;
    const at = shelf.find(clouds);
    w.today?.face(u, v, bearing);
    if (w.today !== undefined && at !== 0) shelf.move(at, w.today);
    if (at !== 0) this.add(at, clouds.few, u, v, sin, cos, fromHere);
    else {
      for (let from = 0; from < clouds.count;) {
        from = shelf.lay(w, clouds, from);
        if (w.today !== undefined) shelf.move(shelf.desk, w.today);
        this.add(shelf.desk, clouds.few, u, v, sin, cos, fromHere);
      }
    }
    if (this.few > 0) {
      const along = this.fewAlong / this.few;
      const across = this.fewAcross / this.few;
      this.drown(this.few, u, v, along * sin + across * cos, along * cos - across * sin, FEW_SD_M, fromHere);
    }
  }

  /** Clouds laid at an address: dry ground leads on, out of bounds is replayed, and what is wet is either. */
  private add(at: number, few: number, u: number, v: number, sin: number, cos: number, fromHere: number): void {
    const { out, outInts } = this.field.shelf;
    this.field.kernel.sum(at, u, v, sin, cos, few, out.byteOffset);
    this.ahead += out[SUM_AHEAD / 4]!;
    this.replayed += out[SUM_REPLAYED / 4]!;
    this.few += out[SUM_FEW / 4]!;
    this.fewAlong += out[SUM_FEW_ALONG / 4]!;
    this.fewAcross += out[SUM_FEW_ACROSS / 4]!;
    const wet = outInts[SUM_WET_COUNT / 4]!;
    for (let i = 0, k = SUM_WET / 4; i < wet; i++, k += WET_BYTES / 4) {
      const along = out[k + WET_ALONG / 4]!;
      const across = out[k + WET_ACROSS / 4]!;
      const share = out[k + WET_SHARE / 4]!;
      this.drown(share, u, v, along * sin + across * cos, along * cos - across * sin, out[k + WET_SD_M / 4]!, fromHere);
    }
  }

  /** Wet balls that lie (du, dv) from where they were played. */
  private drown(share: number, u: number, v: number, du: number, dv: number, sdM: number, fromHere: number): void {
    if (this.relief === undefined) return;
    this.relief.at(u + du, v + dv, du, dv, sdM);
    const { legal, strokes } = this.relief;
    if (strokes < fromHere) {
      this.ahead += share * legal * (1 + strokes);
      this.replayed += share * (1 - legal);
    } else this.replayed += share;
  }
}
