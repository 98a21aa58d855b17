import type { HoleGround } from '../ground/hole.ts';
import type { Kernel } from '../kernel/kernel.ts';
import { bestKernel, type MakeKernel, Room } from '../kernel/room.ts';
import { type Day, REFERENCE } from '../day/day.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Option, Pattern, PlayerModel } from '../player/option.ts';
import type { HeightAt } from '../reach/patternToday.ts';
import { Reach } from '../reach/reach.ts';
import {
  arsenalOf,
  LIE_OF,
  narrowestOf,
  runClassesOf,
  weaponOf,
  type Arsenal,
  takeDay,
  type Making,
  type Runs,
  type Weapon,
} from './arsenal.ts';
import { baselineAt, baselineOf, type Baseline } from './baseline.ts';
import { WIDTHS_M } from './cloud.ts';
import { Blur, type Patch } from './blur.ts';
import { fatesOf, type Fate } from './fate.ts';
import { flowOf } from './flow.ts';
import { greenHeights, greenSlopeOf, type GreenSlope } from './greenSlope.ts';
import { Lattice, SQUARE_STEP_M, type Middle, type Node } from './lattice.ts';
import { playFrame, type PlayFrame } from './playFrame.ts';
import { playHeights } from './playHeights.ts';
import { puttsAt, puttsOf, type Putts } from './putts.ts';
import { NEAR_WIDTHS, WIDE_WIDTHS } from './pyramid.ts';
import {
  cellAt,
  FAIRWAY,
  GREEN,
  OUT,
  paint,
  PENALTY,
  RECOVERY,
  ROUGH,
  TEE,
  UNMAPPED,
  type Box,
  type Raster,
} from './raster.ts';
import { MIXED, NOT_DRY, Sheet } from './sheet.ts';
import { Shelf } from './shelf.ts';
import { ShortSide } from './shortSide.ts';

/** How far round the flag ground is kept in quarter metres, and how far inside that a cloud must be to be read there. */
const NEAR_M = 32;
const NEAR_INSIDE_M = 4.5;
const NEAR_CELL_M = 0.25;
/** Ground in quarter metres, and on the square mesh, beyond the green, and how large a green is followed from the flag it is opened with. */
const NEAR_BEYOND_M = 20;
const MESH_BEYOND_M = 12;
const MESH_LEAST_M = 27;
const GREEN_MOST_M = 36;
/** Ground kept beyond the raster's edge, as it is at the edge, so that wide clouds read right there: two of the widest. */
const PAD_M = 32;
/** More than putts that a ball costs which rolls off the green into water or out of bounds. */
const MOST_OFF_GREEN = 2;

/**
 * Expected strokes from everywhere on a hole, while they are being worked out and after: one smooth lattice of strokes for each lie,
 * and their mixture over the ground as it lies, ready to be averaged under any cloud of balls. The frame, the cells and the meshes stand
 * where they are when the flag is moved; what is fine stands round the whole green.
 */
export class Field {
  /** With the flag where it is now. */
  ground: HoleGround;
  readonly player: PlayerModel;
  readonly frame: PlayFrame;
  readonly raster: Raster;
  /** By raster code. */
  readonly fates: readonly Fate[];
  /** Whether balls are lifted anywhere on the map. */
  readonly water: boolean;
  day: Day;
  /** The ground's heights in the play frame; `undefined` for level ground. */
  readonly heightAt: HeightAt | undefined;
  private readonly climbM: number;
  readonly classes: readonly Runs[];
  readonly arsenal: Arsenal;
  readonly putts: Putts;
  /** `undefined` where greens are taken as flat. */
  readonly greenSlope: GreenSlope | undefined;
  readonly baseline: Baseline;
  readonly lattices: ReadonlyMap<number, Lattice>;
  readonly near: Sheet;
  readonly wide: Sheet;
  /** The field's own memory and the loops that work in it; the sheets' levels and the shelf lie there. */
  readonly kernel: Kernel;
  readonly shelf: Shelf;
  /** The flag in the frame, and the ground round it that is kept fine: written by `putFlag`. */
  flag = { u: 0, v: 0 };
  /** How hard short shots are to stop from where: written by `putFlag`. */
  shortSide!: ShortSide;
  private window: Box = { u0: 0, v0: 0, u1: 0, v1: 0 };
  private readonly nearBox: Box;
  private making: Making;
  /** Baseline and lattice by raster code of the lie. */
  private readonly tables: (Float64Array | undefined)[] = [];
  private readonly meshes: (Lattice | undefined)[] = [];

  constructor(ground: HoleGround, player: PlayerModel, day: Day = REFERENCE, makeKernel: MakeKernel = bestKernel) {
    this.ground = ground;
    this.player = player;
    this.day = day;
    this.frame = playFrame(ground.ball, ground.flag);
    const painted = paint(ground, this.frame);
    const plays = (code: number): boolean => player.options.some((o) => o.byLie[LIE_OF[code]!] !== undefined);
    this.raster = plays(RECOVERY) ? painted : unmappedAsRough(painted);
    this.fates = fatesOf(ground.rules ?? {}, plays);
    this.water = this.fates.some(({ lifted }, code) => lifted > 0 && this.raster.surface.includes(code));
    const relief = ground.heights && playHeights(ground.heights, this.frame, this.raster.box);
    this.heightAt = relief?.heightAt;
    this.climbM = relief?.climbM ?? 0;
    this.making = {
      water: this.water,
      reach: Reach.on(day, this.climbM),
      axisRad: this.frame.bearingRad,
      heightAt: this.heightAt,
    };
    this.classes = runClassesOf(player, this.making);
    this.arsenal = arsenalOf(player, this.making, this.classes);
    this.putts = puttsOf(player.putting);
    this.greenSlope = greenSlopeOf(greenHeights(ground, this.frame), player);
    this.baseline = baselineOf(this.arsenal, this.putts, this.raster);
    const flow = flowOf(ground, this.frame);
    const { u0, u1, v0, v1 } = this.raster.box;
    const padded = { u0: u0 - PAD_M, u1: u1 + PAD_M, v0: v0 - PAD_M, v1: v1 + PAD_M };
    const green = greenOf(this.raster);
    this.nearBox = {
      u0: Math.max(padded.u0, Math.floor(green.u0 - NEAR_BEYOND_M)),
      u1: Math.min(padded.u1, Math.ceil(green.u1 + NEAR_BEYOND_M)),
      v0: Math.max(padded.v0, Math.floor(green.v0 - NEAR_BEYOND_M)),
      v1: Math.min(padded.v1, Math.ceil(green.v1 + NEAR_BEYOND_M)),
    };
    const longest = Math.max(green.u1 - green.u0, green.v1 - green.v0);
    const middle: Middle = {
      u: (green.u0 + green.u1) / 2,
      v: (green.v0 + green.v1) / 2,
      halfM: Math.max(MESH_LEAST_M, SQUARE_STEP_M * Math.ceil((longest / 2 + MESH_BEYOND_M) / SQUARE_STEP_M)),
    };
    const { raster, classes, fates } = this;
    const narrowest = narrowestOf(this.arsenal, classes);
    const inWide = (k: number): number => Math.max(0, narrowest[k]! - (NEAR_WIDTHS.length - 1));
    const inNear = (k: number): number => narrowest[k]!;
    this.wide = new Sheet(padded, 1, WIDE_WIDTHS, raster, fates, classes, flow, inWide, middle);
    this.near = new Sheet(this.nearBox, NEAR_CELL_M, NEAR_WIDTHS, raster, fates, classes, flow, inNear, middle);
    const grids = [this.wide.grid, this.near.grid];
    const bytes = this.wide.bytes() + this.near.bytes() + Blur.bytes(grids) + Shelf.bytes(this.arsenal);
    const room = new Room(bytes, makeKernel);
    const blur = new Blur(room, grids);
    this.wide.lay(room, blur);
    this.near.lay(room, blur);
    this.shelf = new Shelf(room, this.arsenal, this.wide, this.near);
    this.kernel = room.kernel;
    this.lattices = this.makeLattices(middle);
    for (const [code, table] of this.baseline.strokes) this.tables[code] = table;
    for (const [code, lattice] of this.lattices) this.meshes[code] = lattice;
    this.putFlag(ground);
  }

  /** Takes the flag of a ground that is otherwise the same. What is composed is stale until all of it is composed again. */
  putFlag(ground: HoleGround): void {
    this.ground = ground;
    const u = this.frame.u(ground.flag);
    const v = this.frame.v(ground.flag);
    this.flag = { u, v };
    const { nearBox } = this;
    // fine cells that the last flag left out have not followed the lattices since
    this.near.forgetOver(common(nearBox, wider(this.window, NEAR_INSIDE_M)));
    this.window = {
      u0: Math.max(nearBox.u0, Math.floor(u) - NEAR_M),
      u1: Math.min(nearBox.u1, Math.ceil(u) + NEAR_M),
      v0: Math.max(nearBox.v0, Math.floor(v) - NEAR_M),
      v1: Math.min(nearBox.v1, Math.ceil(v) + NEAR_M),
    };
    const { u0, u1, v0, v1 } = this.window;
    const within = NEAR_INSIDE_M;
    this.shelf.readNear(u0 + within, u1 - within, v0 + within, v1 - within);
    this.shortSide = new ShortSide(this.raster, u, v);
    this.wide.flagAt(u, v);
    this.near.flagAt(u, v);
  }

  /** Takes another day into the strokes; values stay those that were worked out before. */
  takeDay(day: Day): void {
    this.day = day;
    this.making = { ...this.making, reach: Reach.on(day, this.climbM) };
    takeDay(this.arsenal, this.player, this.making);
    this.shelf.stand();
  }

  /** Whether a flag would stand among what is kept fine. */
  holds(flag: PlanePoint): boolean {
    const { nearBox: b, frame } = this;
    const u = frame.u(flag);
    const v = frame.v(flag);
    const room = NEAR_BEYOND_M - 2;
    return u - room >= b.u0 && u + room <= b.u1 && v - room >= b.v0 && v + room <= b.v1;
  }

  distanceM(u: number, v: number): number {
    const x = u - this.flag.u;
    const y = v - this.flag.v;
    return Math.sqrt(x * x + y * y);
  }

  /** Of the line from a place to the flag, radians clockwise from the frame's v axis. */
  bearingToFlag(u: number, v: number): number {
    return Math.atan2(this.flag.u - u, this.flag.v - v);
  }

  /** Makes ready a stroke that is not in the arsenal; for a single look the fine rule does for all. */
  arm(place: number, option: Option, pattern: Pattern, rules: 'all' | 'fine only' = 'all'): Weapon {
    return weaponOf(place, option, pattern, this.making, this.classes, rules);
  }

  private makeLattices(middle: Middle): Map<number, Lattice> {
    const lattices = new Map<number, Lattice>();
    for (const code of this.arsenal.keys()) {
      if (code === TEE) continue;
      const lattice = new Lattice(middle);
      const any = [markNeeds(lattice, this.wide, code, 1), markNeeds(lattice, this.near, code, 2)];
      if (any.includes(true)) lattices.set(code, lattice);
    }
    return lattices;
  }

  /** The states of the problem, with their distances from the flag as it stands now still to be taken. */
  nodes(): Node[] {
    return [...this.lattices].flatMap(([lie, lattice]) => lattice.nodes(lie));
  }

  baselineFrom(lie: number, distanceM: number): number {
    return baselineAt(this.tables[lie]!, distanceM);
  }

  /** Strokes from a lie at a place of the play frame; NaN for a lie that this player cannot play. */
  strokesFrom(lie: number, u: number, v: number): number {
    const table = this.tables[lie];
    if (table === undefined) return NaN;
    const base = baselineAt(table, this.distanceM(u, v));
    const lattice = this.meshes[lie];
    return lattice === undefined ? base : base + lattice.at(u, v);
  }

  /** Putts from a place of the green; where it is too steep for a ball to stay, strokes from where it ends. */
  puttsFrom(u: number, v: number): number {
    const { greenSlope: slope, flag } = this;
    if (slope === undefined) return puttsAt(this.putts, this.distanceM(u, v));
    const [x, y] = slope.rest(u, v, (a, b) => this.isGreen(a, b));
    if (!this.isGreen(x, y)) {
      const from = this.strokesOnGround(x, y);
      return Number.isNaN(from) ? puttsAt(this.putts, this.distanceM(u, v)) + MOST_OFF_GREEN : from;
    }
    return puttsAt(this.putts, this.distanceM(x, y)) + slope.more(x, y, flag.u, flag.v);
  }

  /** Whether the ground at a place is painted as green. */
  isGreen(u: number, v: number): boolean {
    return this.raster.surface[cellAt(this.raster, u, v)] === GREEN;
  }

  /** Strokes from a dry place as painted: putts, or strokes from its lie. NaN when wet, out, or unplayable. */
  strokesOnGround(u: number, v: number): number {
    const painted = this.raster.surface[cellAt(this.raster, u, v)]!;
    if (painted === GREEN) return this.puttsFrom(u, v);
    const lie = painted === TEE ? FAIRWAY : painted;
    return lie === PENALTY || lie === OUT ? NaN : this.strokesFrom(lie, u, v);
  }

  /** The patch of the wide sheet's cells in which a node's value is felt. */
  patchOf({ u, v, reachU, reachV }: Node): Patch {
    const { u0, v0, columns, rows } = this.wide.grid;
    return {
      c0: Math.max(0, Math.floor(u - reachU - u0)),
      c1: Math.min(columns - 1, Math.ceil(u + reachU - u0)),
      r0: Math.max(0, Math.floor(v - reachV - v0)),
      r1: Math.min(rows - 1, Math.ceil(v + reachV - v0)),
    };
  }

  /** Takes the lattices' values into the sheets, for patches of the wide sheet's cells; `ready` blurs them. */
  compose(patches: readonly Patch[]): void {
    for (const patch of patches) this.composePatch(patch, false);
  }

  /** Takes a flag that has been put down into all cells, or those in a box, which keep what they had over the baseline; `ready` blurs them. */
  composeForFlag(box?: Box): void {
    const { u0, v0, stepM, columns, rows } = this.wide.grid;
    const whole = { u0, v0, u1: u0 + (columns - 1) * stepM, v1: v0 + (rows - 1) * stepM };
    const part = box === undefined ? whole : common(box, whole);
    if (part !== undefined) this.composePatch(this.wide.patchIn(part), true);
  }

  private composePatch(patch: Patch, overKept: boolean): void {
    if (patch.c0 > patch.c1 || patch.r0 > patch.r1) return;
    const { u0, v0 } = this.wide.grid;
    const piece = {
      u0: u0 + patch.c0 - 0.5,
      v0: v0 + patch.r0 - 0.5,
      u1: u0 + patch.c1 + 0.5,
      v1: v0 + patch.r1 + 0.5,
    };
    const beside = common(piece, common(this.nearBox, wider(this.window, NEAR_INSIDE_M)));
    if (beside !== undefined) this.composeSheet(this.near, this.near.patchIn(beside), overKept);
    const inside = common(piece, this.window);
    if (inside !== undefined) this.averageNear(inside);
    this.composeSheet(this.wide, patch, overKept);
  }

  /** Makes the sheets ready to be read: all of them, or for each run class up to a width only (place in `WIDTHS_M`; -1 for none). */
  ready(widest?: Int8Array): void {
    const to = (k: number): number => (widest === undefined ? WIDTHS_M.length - 1 : widest[k]!);
    this.near.refresh((k) => Math.min(to(k), NEAR_WIDTHS.length - 1));
    this.wide.refresh((k) => (to(k) < 0 ? -1 : Math.max(0, to(k) - (NEAR_WIDTHS.length - 1))));
  }

  /** Strokes of a patch's cells: what the lattices say now, or with `overKept` what they said over the baseline, where that is known. */
  private composeSheet(sheet: Sheet, patch: Patch, overKept: boolean): void {
    const { u0, v0, stepM, columns } = sheet.grid;
    const { only, strokes, over, distanceM, radiusM, turn } = sheet;
    const wide = sheet === this.wide;
    const { window } = this;
    const shares = [...sheet.share];
    for (let r = patch.r0; r <= patch.r1; r++) {
      const v = v0 + r * stepM;
      const beside = !wide || v < window.v0 || v > window.v1;
      for (let c = patch.c0, i = r * columns + patch.c0; c <= patch.c1; c++, i++) {
        const code = only[i]!;
        if (code === NOT_DRY) continue;
        const u = u0 + c * stepM;
        if (!beside && u > window.u0 && u < window.u1) {
          over[i] = NaN;
          continue;
        }
        const d = distanceM[i]!;
        // the slope of a putt changes with the flag
        const sloped = this.greenSlope !== undefined && (code === GREEN || code === MIXED);
        const kept = overKept && !sloped && !Number.isNaN(over[i]!);
        if (code !== MIXED) {
          if (!kept) over[i] = this.overBaseline(code, u, v, radiusM[i]!, turn[i]!);
          strokes[i] = this.baselineOn(code, d) + over[i]!;
          continue;
        }
        let base = 0;
        let more = 0;
        for (const [k, share] of shares) {
          const s = share[i]!;
          if (s === 0) continue;
          base += s * this.baselineOn(k, d);
          if (!kept) more += s * this.overBaseline(k, u, v, radiusM[i]!, turn[i]!);
        }
        if (!kept) over[i] = more;
        strokes[i] = base + over[i]!;
      }
    }
    sheet.changed(patch);
  }

  /** Putts, or the baseline from a lie. */
  private baselineOn(code: number, distanceM: number): number {
    return code === GREEN ? puttsAt(this.putts, distanceM) : baselineAt(this.tables[code]!, distanceM);
  }

  private overBaseline(code: number, u: number, v: number, radiusM: number, turn: number): number {
    if (code === GREEN && this.greenSlope !== undefined) {
      return this.puttsFrom(u, v) - puttsAt(this.putts, this.distanceM(u, v));
    }
    return this.meshes[code]?.atPolar(u, v, radiusM, turn) ?? 0;
  }

  /** Wide cells within a box of whole metres of the near sheet are means of its cells. */
  private averageNear(inside: Box): void {
    const per = Math.round(1 / NEAR_CELL_M);
    const { u0, v0, columns, rows } = this.wide.grid;
    const { nearBox, near } = this;
    for (let v = inside.v0; v < inside.v1; v++) {
      const r = Math.round(v + 0.5 - v0);
      if (r < 0 || r >= rows) continue;
      for (let u = inside.u0; u < inside.u1; u++) {
        const c = Math.round(u + 0.5 - u0);
        if (c < 0 || c >= columns) continue;
        const from = (v - nearBox.v0) * per * near.grid.columns + (u - nearBox.u0) * per;
        this.wide.strokes[r * columns + c] = meanOf(near.strokes, from, per, near.grid.columns);
      }
    }
  }
}

/** What two boxes have in common; `undefined` for nothing. */
function common(a: Box | undefined, b: Box | undefined): Box | undefined {
  if (a === undefined || b === undefined) return undefined;
  const both = {
    u0: Math.max(a.u0, b.u0),
    v0: Math.max(a.v0, b.v0),
    u1: Math.min(a.u1, b.u1),
    v1: Math.min(a.v1, b.v1),
  };
  return both.u0 < both.u1 && both.v0 < both.v1 ? both : undefined;
}

const wider = (b: Box, byM: number): Box => ({ u0: b.u0 - byM, v0: b.v0 - byM, u1: b.u1 + byM, v1: b.v1 + byM });

/** Marks the nodes that the cells of a lie draw on; says whether there are any. */
function markNeeds(lattice: Lattice, sheet: Sheet, code: number, stride: number): boolean {
  const cells = code === PENALTY ? sheet.wetShare : sheet.share.get(code);
  if (cells === undefined) return false;
  const { u0, v0, stepM, columns, rows } = sheet.grid;
  let any = false;
  for (let r = 0; r < rows; r += stride) {
    for (let c = 0; c < columns; c += stride) {
      const i = r * columns + c;
      if (cells[i] === 0) continue;
      any = true;
      lattice.need(u0 + c * stepM, v0 + r * stepM, sheet.radiusM[i]!, sheet.turn[i]!);
    }
  }
  return any;
}

/** The box of the green, as far as it reaches from the flag at the frame's origin; the flag alone without one. */
function greenOf(r: Raster): Box {
  let [u0, u1, v0, v1] = [0, 0, 0, 0];
  for (let row = 0; row < r.rows; row++) {
    for (let column = 0; column < r.columns; column++) {
      if (r.surface[row * r.columns + column] !== GREEN) continue;
      const u = r.box.u0 + column * r.stepM;
      const v = r.box.v0 + row * r.stepM;
      u0 = Math.min(u0, u);
      u1 = Math.max(u1, u + r.stepM);
      v0 = Math.min(v0, v);
      v1 = Math.max(v1, v + r.stepM);
    }
  }
  const held = (x: number): number => Math.min(GREEN_MOST_M, Math.max(-GREEN_MOST_M, x));
  return { u0: held(u0), u1: held(u1), v0: held(v0), v1: held(v1) };
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
