import type { HoleGround, Ring } from '../ground/hole.ts';
import { mappedIndex } from '../ground/mapped.ts';
import { SURFACES } from '../quantity/lies.ts';
import type { PlayFrame } from './playFrame.ts';

/** Codes of surfaces in the raster: their place in `SURFACES`. */
export const ROUGH = SURFACES.indexOf('rough');
export const RECOVERY = SURFACES.indexOf('recovery');
export const FAIRWAY = SURFACES.indexOf('fairway');
export const GREEN = SURFACES.indexOf('green');
export const TEE = SURFACES.indexOf('tee');
export const BUNKER = SURFACES.indexOf('bunker');
export const PENALTY = SURFACES.indexOf('penalty');
export const OUT = SURFACES.indexOf('out');

/** Area numbers that are not areas: ground where nothing is painted, and ground the map says nothing about. */
export const BARE = -1;
export const UNMAPPED = -2;

/** A rectangle of the play frame, in whole metres. */
export interface Box {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
}

/** The ground as small square cells, row by row from `v0`; each holds what lies on top at its centre. */
export interface Raster {
  readonly box: Box;
  readonly stepM: number;
  readonly columns: number;
  readonly rows: number;
  readonly surface: Uint8Array;
  /** Index in `ground.areas`, or `BARE` or `UNMAPPED`. */
  readonly area: Int16Array;
}

/** Room kept round the line of the hole: three standard deviations of a wild drive. */
const BESIDE_M = 110;
const BEHIND_M = 40;
const BEYOND_M = 85;
/** Kept out of bounds where a ball's way out of them matters. */
const OUT_KEPT_M = 80;
const MOST_CELLS = 6e6;

/**
 * Paints the areas of a hole in their order. A cell takes the area that covers its centre (even-odd).
 * Unmapped ground is painted as recovery: nobody has said what is there. The box is cut down to what is in bounds.
 */
export function paint(ground: HoleGround, frame: PlayFrame): Raster {
  const whole = boxOf(ground, frame);
  const cells = (whole.u1 - whole.u0) * (whole.v1 - whole.v0);
  const stepM = cells * 16 <= MOST_CELLS ? 0.25 : cells * 4 <= MOST_CELLS ? 0.5 : 1;
  const raster = blank(whole, stepM);
  ground.areas.forEach((a, i) => {
    const rings = [a.polygon.outer, ...a.polygon.inner].map((r) => inFrame(r, frame));
    fill(raster, rings, SURFACES.indexOf(a.surface), i);
  });
  markUnmapped(raster, ground, frame);
  return cropped(raster, ground.rules?.e5 === true ? OUT_KEPT_M : 2);
}

function boxOf(ground: HoleGround, frame: PlayFrame): Box {
  const along = [ground.ball, ground.flag, ...ground.line];
  const us = along.map((p) => frame.u(p));
  const vs = along.map((p) => frame.v(p));
  const [u0, u1] = inEights(Math.floor(Math.min(...us)) - BESIDE_M, Math.ceil(Math.max(...us)) + BESIDE_M);
  const [v0, v1] = inEights(Math.floor(Math.min(...vs)) - BEHIND_M, Math.ceil(Math.max(...vs)) + BEYOND_M);
  return { u0, u1, v0, v1 };
}

/** The interval widened at both ends to a multiple of eight: the coarsest grid then fits, and a mirrored hole has mirrored grids. */
function inEights(from: number, to: number): [number, number] {
  const more = (8 - ((to - from) % 8)) % 8;
  return [from - Math.floor(more / 2), to + Math.ceil(more / 2)];
}

function blank(box: Box, stepM: number): Raster {
  const columns = Math.round((box.u1 - box.u0) / stepM);
  const rows = Math.round((box.v1 - box.v0) / stepM);
  const surface = new Uint8Array(columns * rows).fill(ROUGH);
  return { box, stepM, columns, rows, surface, area: new Int16Array(columns * rows).fill(BARE) };
}

/** Vertices of a ring as u, v, u, v… */
function inFrame(ring: Ring, frame: PlayFrame): Float64Array {
  const out = new Float64Array(ring.length * 2);
  ring.forEach((p, i) => {
    out[2 * i] = frame.u(p);
    out[2 * i + 1] = frame.v(p);
  });
  return out;
}

/** Scan-line fill by the even-odd rule over all rings together. */
function fill(r: Raster, rings: readonly Float64Array[], surface: number, area: number): void {
  const crossings: number[][] = Array.from({ length: r.rows }, () => []);
  for (const ring of rings) {
    const n = ring.length / 2;
    for (let i = 0, j = n - 1; i < n; j = i++) {
      const ui = ring[2 * i]!;
      const vi = ring[2 * i + 1]!;
      const uj = ring[2 * j]!;
      const vj = ring[2 * j + 1]!;
      if (vi === vj) continue;
      const first = Math.max(0, Math.ceil((Math.min(vi, vj) - r.box.v0) / r.stepM - 0.5));
      const last = Math.min(r.rows - 1, Math.ceil((Math.max(vi, vj) - r.box.v0) / r.stepM - 0.5) - 1);
      for (let row = first; row <= last; row++) {
        const v = r.box.v0 + (row + 0.5) * r.stepM;
        crossings[row]!.push(ui + ((v - vi) * (uj - ui)) / (vj - vi));
      }
    }
  }
  crossings.forEach((us, row) => {
    us.sort((a, b) => a - b);
    for (let k = 0; k + 1 < us.length; k += 2) {
      const from = Math.max(0, Math.ceil((us[k]! - r.box.u0) / r.stepM - 0.5));
      const to = Math.min(r.columns, Math.ceil((us[k + 1]! - r.box.u0) / r.stepM - 0.5));
      if (to <= from) continue;
      r.surface.fill(surface, row * r.columns + from, row * r.columns + to);
      r.area.fill(area, row * r.columns + from, row * r.columns + to);
    }
  });
}

/** Squares of a metre whose middle is farther than 40 yd from anything mapped, and which nothing is painted on, become unmapped. */
function markUnmapped(r: Raster, ground: HoleGround, frame: PlayFrame): void {
  const mapped = mappedIndex(ground);
  const per = Math.round(1 / r.stepM);
  for (let row = 0; row < r.rows; row += per) {
    for (let column = 0; column < r.columns; column += per) {
      const first = row * r.columns + column;
      if (r.area[first] !== BARE) continue;
      const u = r.box.u0 + (column + per / 2) * r.stepM;
      const v = r.box.v0 + (row + per / 2) * r.stepM;
      if (mapped.isMapped(frame.toPlane(u, v))) continue;
      for (let at = first; at < first + per * r.columns; at += r.columns) {
        r.area.fill(UNMAPPED, at, at + per);
        r.surface.fill(RECOVERY, at, at + per);
      }
    }
  }
}

/** The raster cut to the smallest whole-metre box that holds all ground in bounds, and some metres round it. */
function cropped(r: Raster, pad: number): Raster {
  let [c0, c1, r0, r1] = [r.columns, -1, r.rows, -1];
  for (let row = 0; row < r.rows; row++) {
    for (let column = 0; column < r.columns; column++) {
      if (r.surface[row * r.columns + column] === OUT) continue;
      if (column < c0) c0 = column;
      if (column > c1) c1 = column;
      if (row < r0) r0 = row;
      if (row > r1) r1 = row;
    }
  }
  if (c1 < 0) return r;
  const [u0, u1] = inEights(Math.floor(r.box.u0 + c0 * r.stepM) - pad, Math.ceil(r.box.u0 + (c1 + 1) * r.stepM) + pad);
  const [v0, v1] = inEights(Math.floor(r.box.v0 + r0 * r.stepM) - pad, Math.ceil(r.box.v0 + (r1 + 1) * r.stepM) + pad);
  const box: Box = {
    u0: Math.max(r.box.u0, u0),
    u1: Math.min(r.box.u1, u1),
    v0: Math.max(r.box.v0, v0),
    v1: Math.min(r.box.v1, v1),
  };
  const out = blank(box, r.stepM);
  const skip = Math.round((box.u0 - r.box.u0) / r.stepM);
  for (let row = 0; row < out.rows; row++) {
    const from = (row + Math.round((box.v0 - r.box.v0) / r.stepM)) * r.columns + skip;
    out.surface.set(r.surface.subarray(from, from + out.columns), row * out.columns);
    out.area.set(r.area.subarray(from, from + out.columns), row * out.columns);
  }
  return out;
}

/** The cell that holds a place; a place outside the box gives the nearest cell. */
export function cellAt(r: Raster, u: number, v: number): number {
  const column = Math.min(r.columns - 1, Math.max(0, Math.floor((u - r.box.u0) / r.stepM)));
  const row = Math.min(r.rows - 1, Math.max(0, Math.floor((v - r.box.v0) / r.stepM)));
  return row * r.columns + column;
}
