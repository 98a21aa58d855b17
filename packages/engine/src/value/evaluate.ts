import type { Weapon } from './arsenal.ts';
import { WIDTHS_M, type Clouds } from './cloud.ts';
import { isNear, type Field, type Sheet } from './field.ts';
import { readLevel, type Pyramid } from './pyramid.ts';
import type { Relief } from './relief.ts';

/** Largest chance of having to play the same stroke again that the fixed point is trusted with. */
const MOST_REPLAYED = 0.97;
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
    const sin = Math.sin(bearing);
    const cos = Math.cos(bearing);
    this.ahead = 0;
    this.replayed = 0;
    for (let i = 0; i < count; i++) {
      const a = alongM[i]!;
      const r = acrossM[i]!;
      const x = u + a * sin + r * cos;
      const y = v + a * cos - r * sin;
      if (w.runsM === undefined) this.rests(weight[i]!, x, y, width[i]!, u, v, fromHere);
      else this.pitches(weight[i]!, x, y, width[i]!, u, v, sin, cos, w.runsM, 3 * part[i]!, fromHere);
    }
  }

  private sheetFor(width: number, x: number, y: number): { sheet: Sheet; level: number } {
    const near = width <= NEAR_ONLY && isNear(x, y);
    return near
      ? { sheet: this.field.near, level: width }
      : { sheet: this.field.wide, level: Math.max(0, width - NEAR_ONLY) };
  }

  /** A cloud of balls that stop where they are. */
  private rests(weight: number, x: number, y: number, width: number, u: number, v: number, fromHere: number): void {
    const { sheet, level } = this.sheetFor(width, x, y);
    const grid = sheet.shape.grids[level]!;
    this.ahead += weight * readLevel(sheet.dry.levels[level]!, grid, x, y);
    if (sheet.out) this.replayed += weight * readLevel(sheet.out.levels[level]!, grid, x, y);
    if (sheet.wet) this.drown(weight * readLevel(sheet.wet.levels[level]!, grid, x, y), x, y, width, u, v, fromHere);
  }

  /** A cloud of balls that pitch there: what falls in water, sand or out of bounds stays; the rest runs on by the surface it pitched on. */
  private pitches(
    weight: number,
    x: number,
    y: number,
    width: number,
    u: number,
    v: number,
    sin: number,
    cos: number,
    runsM: Float64Array,
    at: number,
    fromHere: number,
  ): void {
    const { sheet, level } = this.sheetFor(width, x, y);
    const grid = sheet.shape.grids[level]!;
    const read = (p: Pyramid | undefined): number => (p ? readLevel(p.levels[level]!, grid, x, y) : 0);
    this.ahead += weight * read(sheet.sand);
    this.replayed += weight * read(sheet.out);
    this.drown(weight * read(sheet.wet), x, y, width, u, v, fromHere);
    for (let k = 0; k < 3; k++) {
      const share = read(sheet.runsOn[k]);
      if (share < 1e-5) continue;
      const run = runsM[at + k]!;
      this.rests(weight * share, x + run * sin, y + run * cos, width, u, v, fromHere);
    }
  }

  private drown(wet: number, x: number, y: number, width: number, u: number, v: number, fromHere: number): void {
    if (wet < 1e-7 || this.relief === undefined) return;
    const length = Math.hypot(x - u, y - v) || 1;
    this.relief.at(x, y, (x - u) / length, (y - v) / length, WIDTHS_M[width]!);
    const { legal, strokes } = this.relief;
    if (strokes < fromHere) {
      this.ahead += wet * legal * (1 + strokes);
      this.replayed += wet * (1 - legal);
    } else this.replayed += wet;
  }
}
