import type { HoleGround } from '../ground/hole.ts';
import type { Pattern, PlayerModel } from '../player/option.ts';
import { arsenalOf, narrowestOf, runClassesOf, weaponOf, type Arsenal, type Runs, type Weapon } from './arsenal.ts';
import { baselineAt, baselineOf, type Baseline } from './baseline.ts';
import { WIDTHS_M } from './cloud.ts';
import { flowOf } from './flow.ts';
import { Lattice, type Node } from './lattice.ts';
import { playFrame, type PlayFrame } from './playFrame.ts';
import { puttsAt, puttsOf, type Putts } from './putts.ts';
import { NEAR_WIDTHS, WIDE_WIDTHS } from './pyramid.ts';
import { cellAt, FAIRWAY, GREEN, OUT, paint, PENALTY, RECOVERY, ROUGH, TEE, UNMAPPED, type Raster } from './raster.ts';
import { Sheet } from './sheet.ts';

/** Half the side of the square round the flag that is kept in quarter metres, and how far inside it a cloud must be to be read there. */
const NEAR_M = 32;
const NEAR_READ_M = NEAR_M - 4.5;
const NEAR_CELL_M = 0.25;
/** Ground kept beyond the raster's edge, as it is at the edge, so that wide clouds read right there: two of the widest. */
const PAD_M = 32;

/**
 * Expected strokes from everywhere on a hole, while they are being worked out and after: one smooth lattice of strokes for each lie,
 * and their mixture over the ground as it lies, ready to be averaged under any cloud of balls.
 */
export class Field {
  readonly ground: HoleGround;
  readonly player: PlayerModel;
  readonly frame: PlayFrame;
  readonly raster: Raster;
  /** Whether any penalty area is on the map. */
  readonly water: boolean;
  readonly classes: readonly Runs[];
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
    this.water = painted.surface.includes(PENALTY);
    this.classes = runClassesOf(player);
    this.arsenal = arsenalOf(player, this.water, this.classes);
    this.raster = this.arsenal.has(RECOVERY) ? painted : unmappedAsRough(painted);
    this.putts = puttsOf(player.putting);
    this.baseline = baselineOf(this.arsenal, this.putts, this.raster);
    const flow = flowOf(ground, this.frame);
    const plays = (code: number): boolean => this.arsenal.has(code);
    const { u0, u1, v0, v1 } = this.raster.box;
    const padded = { u0: u0 - PAD_M, u1: u1 + PAD_M, v0: v0 - PAD_M, v1: v1 + PAD_M };
    const square = { u0: -NEAR_M, v0: -NEAR_M, u1: NEAR_M, v1: NEAR_M };
    const narrowest = narrowestOf(this.arsenal, this.classes);
    const wide = (k: number): number => Math.max(0, narrowest[k]! - (NEAR_WIDTHS.length - 1));
    this.wide = new Sheet(padded, 1, WIDE_WIDTHS, this.raster, plays, this.classes, flow, wide);
    this.near = new Sheet(
      square,
      NEAR_CELL_M,
      NEAR_WIDTHS,
      this.raster,
      plays,
      this.classes,
      flow,
      (k) => narrowest[k]!,
    );
    this.lattices = this.makeLattices();
  }

  /** Makes ready a stroke that is not in the arsenal. */
  arm(option: number, pattern: Pattern): Weapon {
    return weaponOf(option, pattern, this.water, this.classes);
  }

  private makeLattices(): Map<number, Lattice> {
    const lattices = new Map<number, Lattice>();
    for (const code of this.arsenal.keys()) {
      if (code === TEE) continue;
      const lattice = new Lattice();
      const any = [markNeeds(lattice, this.wide, code, 1), markNeeds(lattice, this.near, code, 2)];
      if (any.includes(true)) lattices.set(code, lattice);
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
    return this.strokesAt(lie, u, v, Math.sqrt(u * u + v * v));
  }

  private strokesAt(lie: number, u: number, v: number, distanceM: number): number {
    const table = this.baseline.strokes.get(lie);
    if (table === undefined) return NaN;
    const base = baselineAt(table, distanceM);
    const lattice = this.lattices.get(lie);
    return lattice === undefined ? base : base + lattice.at(u, v, distanceM);
  }

  /** Strokes from a dry place as painted: putts, or strokes from its lie. NaN when wet, out, or unplayable. */
  strokesOnGround(u: number, v: number): number {
    const painted = this.raster.surface[cellAt(this.raster, u, v)]!;
    if (painted === GREEN) return puttsAt(this.putts, Math.hypot(u, v));
    const lie = painted === TEE ? FAIRWAY : painted;
    return lie === PENALTY || lie === OUT ? NaN : this.strokesFrom(lie, u, v);
  }

  /** Takes the lattices' values into the sheets, for ground between two distances from the flag; `ready` blurs them. */
  compose(fromM: number, toM: number): void {
    if (fromM < NEAR_M * Math.SQRT2) {
      this.composeSheet(this.near, fromM, toM);
      this.averageNear();
    }
    this.composeSheet(this.wide, fromM - 1, toM + 1);
  }

  /** Makes the sheets ready to be read: all of them, or for each run class up to a width only (place in `WIDTHS_M`; -1 for none). */
  ready(widest?: Int8Array): void {
    const to = (k: number): number => (widest === undefined ? WIDTHS_M.length - 1 : widest[k]!);
    this.near.refresh((k) => Math.min(to(k), NEAR_WIDTHS.length - 1));
    this.wide.refresh((k) => (to(k) < 0 ? -1 : Math.max(0, to(k) - (NEAR_WIDTHS.length - 1))));
  }

  private composeSheet(sheet: Sheet, fromM: number, toM: number): void {
    const { u0, v0, stepM, columns, rows } = sheet.grid;
    const wide = sheet === this.wide;
    let [c0, c1, r0, r1] = [columns, -1, rows, -1];
    const codes = [...sheet.share.keys()];
    const shares = [...sheet.share.values()];
    const low = Math.max(0, Math.floor((-toM - v0) / stepM));
    const high = Math.min(rows - 1, Math.ceil((toM - v0) / stepM));
    for (let r = low; r <= high; r++) {
      const v = v0 + r * stepM;
      for (let c = 0; c < columns; c++) {
        const i = r * columns + c;
        const d = sheet.distanceM[i]!;
        if (d < fromM || d > toM) continue;
        const u = u0 + c * stepM;
        if (c < c0) c0 = c;
        if (c > c1) c1 = c;
        if (r < r0) r0 = r;
        if (r > r1) r1 = r;
        if (wide && u > -NEAR_M && u < NEAR_M && v > -NEAR_M && v < NEAR_M) continue;
        let sum = 0;
        for (let k = 0; k < codes.length; k++) {
          const s = shares[k]![i]!;
          if (s === 0) continue;
          sum += s * (codes[k] === GREEN ? puttsAt(this.putts, d) : this.strokesAt(codes[k]!, u, v, d));
        }
        sheet.strokes[i] = sum;
      }
    }
    if (c1 >= 0) sheet.changed({ c0, c1, r0, r1 });
  }

  /** Wide cells within the near square are means of its cells. */
  private averageNear(): void {
    const per = Math.round(1 / NEAR_CELL_M);
    const { u0, v0, columns, rows } = this.wide.grid;
    for (let a = 0; a < 2 * NEAR_M; a++) {
      const r = Math.round(-NEAR_M + 0.5 - v0) + a;
      if (r < 0 || r >= rows) continue;
      for (let b = 0; b < 2 * NEAR_M; b++) {
        const c = Math.round(-NEAR_M + 0.5 - u0) + b;
        if (c < 0 || c >= columns) continue;
        const from = a * per * this.near.grid.columns + b * per;
        this.wide.strokes[r * columns + c] = meanOf(this.near.strokes, from, per, this.near.grid.columns);
      }
    }
  }
}

/** Marks the nodes that the cells of a lie draw on; says whether there are any. */
function markNeeds(lattice: Lattice, sheet: Sheet, code: number, stride: number): boolean {
  const cells = code === PENALTY ? sheet.wetShare : sheet.share.get(code);
  if (cells === undefined) return false;
  const { u0, v0, stepM, columns, rows } = sheet.grid;
  let any = false;
  for (let r = 0; r < rows; r += stride) {
    for (let c = 0; c < columns; c += stride) {
      if (cells[r * columns + c] === 0) continue;
      any = true;
      lattice.need(u0 + c * stepM, v0 + r * stepM);
    }
  }
  return any;
}

function meanOf(cells: Float64Array, from: number, per: number, columns: number): number {
  let sum = 0;
  for (let y = 0; y < per; y++) for (let x = 0; x < per; x++) sum += cells[from + y * columns + x]!;
  return sum / (per * per);
}

/** For a player with no stroke from recovery, unmapped ground is rough. */
function unmappedAsRough(r: Raster): Raster {
  const surface = r.surface.map((code, i) => (r.area[i] === UNMAPPED ? ROUGH : code));
  return { ...r, surface };
}

/** Whether clouds at a place are read from the sheet round the flag. */
export const isNear = (u: number, v: number): boolean =>
  u > -NEAR_READ_M && u < NEAR_READ_M && v > -NEAR_READ_M && v < NEAR_READ_M;
