import { Drops, strokesFromDrop, WalkBack, WHYS, type Crossing } from './crossing.ts';
import type { Field } from './field.ts';
import { cellAt, PENALTY } from './raster.ts';
import { wetCellsOf, type WetCells } from './wetCells.ts';

/**
 * What a ball that must be lifted costs beyond the stroke, by where it lies and the way it was travelling. A ball in a penalty area last crossed
 * its edge at X, found by walking back along its line. Relief (Rule 17.1, one penalty stroke): back on the line from the hole through X, here
 * at whole metres up to 150; from a red area also within two club-lengths of X, no nearer the hole (sixteen places at 2.3 m). A ball that cannot
 * be played (Rule 19) has all of these from where it lies; in sand only the line back out of it, for one stroke more. Under E-5 a ball out of
 * bounds or lost goes to the nearest fairway for two. Stroke and distance is left to whoever asks: they know where the ball was played from.
 * X depends on the landing place and the direction alone, so one table serves every stroke of the hole, and X stays when the flag moves.
 */
const DIRECTIONS = 120;
const CELL_M = 3;
const LEVELS = 8;
/** A drop's strokes that move by less are left as they are. */
const SAME_STROKES = 2e-5;

/** The places where a ball may be dropped after each crossing, one crossing after another. */
interface DropTable {
  /** Those of crossing k are first[k] up to first[k + 1]. */
  readonly first: Int32Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly lie: Uint8Array;
  /** Penalty strokes beyond the first. */
  readonly more: Uint8Array;
  readonly distanceM: Float64Array;
  /** Strokes from each; NaN until first priced. */
  readonly strokes: Float64Array;
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

/** The cheapest relief for one ball. */
export interface Dropped {
  readonly u: number;
  readonly v: number;
  readonly lie: number;
  readonly penaltyStrokes: number;
  /** Strokes from there, the penalty left out. */
  readonly strokes: number;
}

export class Relief {
  private readonly field: Field;
  private readonly offers: Drops;
  private readonly walk: WalkBack;
  private readonly wet: WetCells;
  /** Wet cells whose ball may be played as it lies: 1 for these. */
  private readonly asItLies: Uint8Array;
  private readonly levels: readonly WetLevel[];
  private readonly crossings: Crossing[] = [];
  /** Places in `held` (direction after direction, wet cell by wet cell) whose ball crossed at each crossing, one crossing after another. */
  private readonly placesFirst: Int32Array;
  private readonly places: Int32Array;
  /** The places in `held` that no crossing was found for. */
  private readonly uncrossed: Int32Array;
  /** Strokes from the cheapest drop of each crossing, penalties beyond the first in; NaN where there is none. */
  private readonly cheapest: Float64Array;
  /** Strokes that the table holds for each direction and wet cell; NaN for none. */
  private readonly held: Float32Array;
  private drops: DropTable;
  /** Written by `at`: wet balls with a legal drop as a share of all wet ones, and the mean strokes from it. */
  legal = 0;
  strokes = 0;

  constructor(field: Field) {
    this.field = field;
    this.walk = new WalkBack(field);
    this.offers = new Drops(field);
    this.wet = wetCellsOf(field.raster, CELL_M, field.fates);
    this.asItLies = Uint8Array.from(this.wet.u, (u, i) => (this.isPlayed(u, this.wet.v[i]!) ? 1 : 0));
    this.levels = Array.from({ length: LEVELS }, (_, k) => {
      const columns = Math.ceil(this.wet.columns / 2 ** k) + 2;
      const rows = Math.ceil(this.wet.rows / 2 ** k) + 2;
      return { cellM: CELL_M * 2 ** k, columns, rows, sums: new Float32Array(3 * DIRECTIONS * columns * rows) };
    });
    const n = this.wet.count;
    this.wet.share.forEach((share, i) => this.add(0, i, 0, share));
    for (const { columns, rows, sums } of this.levels) {
      const one = 3 * columns * rows;
      for (let d = 1; d < DIRECTIONS; d++) sums.copyWithin(d * one, 0, one);
    }
    this.held = new Float32Array(DIRECTIONS * n).fill(NaN);
    const crossingOf = this.walkAllBack();
    this.placesFirst = new Int32Array(this.crossings.length + 1);
    for (const k of crossingOf) if (k >= 0) this.placesFirst[k + 1]!++;
    for (let k = 0; k < this.crossings.length; k++) this.placesFirst[k + 1]! += this.placesFirst[k]!;
    this.places = new Int32Array(this.placesFirst.at(-1)!);
    const next = this.placesFirst.slice();
    crossingOf.forEach((k, place) => {
      if (k >= 0) this.places[next[k]!++] = place;
    });
    this.uncrossed = crossingOf.map((_, place) => place).filter((place) => crossingOf[place] === -1);
    this.cheapest = new Float64Array(this.crossings.length).fill(NaN);
    this.drops = this.findDrops();
  }

  /** The crossing of every direction and wet cell, by its place in `crossings`: one for each square metre and reason; -1 for none. */
  private walkAllBack(): Int32Array {
    const { count, u, v } = this.wet;
    const { box } = this.field.raster;
    const wide = box.u1 - box.u0 + 4;
    const known = new Map<number, number>();
    return Int32Array.from({ length: DIRECTIONS * count }, (_, place) => {
      const i = place % count;
      const turn = (2 * Math.PI * Math.floor(place / count)) / DIRECTIONS;
      const x = this.walk.from(u[i]!, v[i]!, Math.sin(turn), Math.cos(turn));
      if (x === undefined) return -1;
      const square = (Math.floor(x.v) - box.v0 + 2) * wide + Math.floor(x.u) - box.u0 + 2;
      const key = WHYS.length * square + WHYS.indexOf(x.why);
      const at = known.get(key);
      if (at !== undefined) return at;
      known.set(key, this.crossings.length);
      return this.crossings.push(x) - 1;
    });
  }

  private findDrops(): DropTable {
    const us: number[] = [];
    const vs: number[] = [];
    const lies: number[] = [];
    const mores: number[] = [];
    const first = new Int32Array(this.crossings.length + 1);
    this.crossings.forEach((x, k) => {
      this.offers.offer(x, (u, v, lie, more) => {
        us.push(u);
        vs.push(v);
        lies.push(lie);
        mores.push(more);
      });
      first[k + 1] = us.length;
    });
    return {
      first,
      u: Float64Array.from(us),
      v: Float64Array.from(vs),
      lie: Uint8Array.from(lies),
      more: Uint8Array.from(mores),
      distanceM: Float64Array.from(us, (u, i) => this.field.distanceM(u, vs[i]!)),
      strokes: new Float64Array(us.length).fill(NaN),
    };
  }

  /** Finds the drops again for a flag that has been moved; `refresh` prices them. */
  flagMoved(): void {
    this.drops = this.findDrops();
  }

  /** The cheapest relief for one ball that came along a unit direction, exactly; played as it lies where that is cheaper. */
  relief(u: number, v: number, du: number, dv: number): Dropped | undefined {
    let best: Dropped | undefined = this.isPlayed(u, v)
      ? { u, v, lie: PENALTY, penaltyStrokes: 0, strokes: this.field.strokesFrom(PENALTY, u, v) }
      : undefined;
    const x = this.walk.from(u, v, du, dv);
    if (x === undefined) return best;
    let least = best?.strokes ?? Infinity;
    this.offers.offer(x, (dropU, dropV, lie, more) => {
      const strokes = strokesFromDrop(this.field, dropU, dropV, lie);
      if (!(1 + more + strokes < least)) return;
      least = 1 + more + strokes;
      best = { u: dropU, v: dropV, lie, penaltyStrokes: 1 + more, strokes };
    });
    return best;
  }

  /** Whether a ball in a penalty area may be played as it lies: the player states a stroke for it, and it is neither water nor barred. */
  private isPlayed(u: number, v: number): boolean {
    const { arsenal, raster, ground } = this.field;
    const cell = cellAt(raster, u, v);
    if (raster.surface[cell] !== PENALTY || !arsenal.has(PENALTY)) return false;
    return ground.areas[raster.area[cell]!]?.barred !== true;
  }

  /** Takes changed strokes into the table: those from drops between two distances from the flag, and from any never priced. */
  refresh(fromM: number, toM: number): void {
    const { first, u, v, lie, more, distanceM, strokes } = this.drops;
    const plays = this.field.arsenal.has(PENALTY);
    for (let k = 0; k < this.crossings.length; k++) {
      let least = Infinity;
      for (let i = first[k]!; i < first[k + 1]!; i++) {
        const stale = distanceM[i]! >= fromM && distanceM[i]! <= toM;
        if (stale || Number.isNaN(strokes[i]!)) strokes[i] = strokesFromDrop(this.field, u[i]!, v[i]!, lie[i]!);
        least = Math.min(least, more[i]! + strokes[i]!);
      }
      const dropped = least === Infinity ? NaN : least;
      const same = Math.abs(dropped - this.cheapest[k]!) < SAME_STROKES || Object.is(dropped, this.cheapest[k]);
      if (same && !plays) continue;
      if (!same) this.cheapest[k] = dropped;
      for (let at = this.placesFirst[k]!; at < this.placesFirst[k + 1]!; at++) {
        this.hold(this.places[at]!, this.cheapest[k]!, plays);
      }
    }
    if (plays) for (const place of this.uncrossed) this.hold(place, NaN, true);
  }

  /** Puts the cost of one wet cell and direction into the table. */
  private hold(place: number, dropped: number, plays: boolean): void {
    const n = this.wet.count;
    const i = place % n;
    const d = (place - i) / n;
    const lies = plays && this.asItLies[i] === 1;
    const asItLies = lies ? this.field.strokesFrom(PENALTY, this.wet.u[i]!, this.wet.v[i]!) - 1 : Infinity;
    const strokes = dropped < asItLies ? dropped : lies ? asItLies : NaN;
    const before = this.held[place]!;
    if (Object.is(strokes, before) || Math.abs(strokes - before) < SAME_STROKES) return;
    const share = this.wet.share[i]!;
    const [had, has] = [Number.isNaN(before) ? 0 : 1, Number.isNaN(strokes) ? 0 : 1];
    this.held[place] = strokes;
    if (had !== has) this.add(d, i, 1, (has - had) * share);
    this.add(d, i, 2, share * ((has && strokes) - (had && before)));
  }

  /** Adds to one of a wet cell's three figures, at every level. */
  private add(direction: number, cell: number, figure: number, amount: number): void {
    const column = this.wet.column[cell]!;
    const row = this.wet.row[cell]!;
    let part = amount;
    for (let l = 0; l < LEVELS; l++, part /= 4) {
      const { columns, rows, sums } = this.levels[l]!;
      const at = 3 * ((direction * rows + (row >> l) + 1) * columns + (column >> l) + 1);
      sums[at + figure]! += part;
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
      const x = (u - this.wet.u0) / cellM + 0.5;
      const y = (v - this.wet.v0) / cellM + 0.5;
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
