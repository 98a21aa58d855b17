import { describe, expect, it } from 'vitest';
import { randomFrom, type Random } from '../math/random.ts';
import {
  CLOUDS_HEAD_BYTES,
  CLOUDS_PARTS,
  GROUP_BYTES,
  LEVEL_BYTES,
  LEVEL_COLUMNS,
  LEVEL_DRY,
  LEVEL_OUT,
  LEVEL_PER_M,
  LEVEL_ROWS,
  LEVEL_U0,
  LEVEL_V0,
  LEVEL_WET,
  PART_BYTES,
  PART_GROUPS,
  PART_LEVEL,
  PART_MOVED_ACROSS,
  PART_MOVED_ALONG,
  PART_NEAR,
  PART_SD_M,
  PART_SINGLES,
  SINGLE_BYTES,
  SUM_AHEAD,
  SUM_FEW,
  SUM_FEW_ACROSS,
  SUM_FEW_ALONG,
  SUM_NEAR,
  SUM_REPLAYED,
  SUM_WET,
  SUM_WET_COUNT,
  WET_BYTES,
} from './layout.ts';
import { plainKernel } from './plainKernel.ts';
import { bytesOf, Room, type MakeKernel } from './room.ts';
import { vectorKernel } from './vectorKernel.ts';

const NEAR = { u0: -12, u1: 9, v0: -10, v1: 13 };
const LEAST = 4e-4;

interface Level {
  readonly u0: number;
  readonly v0: number;
  readonly perM: number;
  readonly columns: number;
  readonly rows: number;
  readonly dry: Float32Array;
  readonly out: Float32Array | undefined;
  readonly wet: Float32Array | undefined;
}

interface Cloud {
  readonly weight: number;
  readonly along: number;
  readonly across: number;
}

interface Part {
  readonly far: Level;
  readonly near: Level | undefined;
  readonly sdM: number;
  readonly moved: readonly [along: number, across: number];
  readonly clouds: readonly Cloud[];
}

interface Case {
  readonly parts: readonly Part[];
  readonly u: number;
  readonly v: number;
  readonly bearing: number;
}

interface Wet extends Cloud {
  readonly sdM: number;
}

/** What a sum comes to. */
interface Total {
  readonly figures: readonly number[];
  readonly wet: readonly Wet[];
}

const vector: MakeKernel = (bytes) => {
  const kernel = vectorKernel(bytes);
  if (kernel === undefined) throw new Error('no WebAssembly with vectors here');
  return kernel;
};

function randomLevel(random: Random): Level {
  const columns = 2 + random.below(40);
  const rows = 2 + random.below(40);
  const grid = (most: number): Float32Array =>
    Float32Array.from({ length: columns * rows }, () => most * random.next());
  // dry ground mostly, so that the wet shares of some clouds are nought and of others small
  const shore = (): Float32Array => grid(1).map((x) => (x < 0.7 ? 0 : x < 0.8 ? 0.01 * x : x));
  return {
    u0: -30 * random.next(),
    v0: -30 * random.next(),
    perM: [4, 2, 1, 0.5][random.below(4)] ?? 1,
    columns,
    rows,
    dry: grid(6),
    out: random.next() < 0.5 ? shore() : undefined,
    wet: random.next() < 0.6 ? shore() : undefined,
  };
}

function randomCase(random: Random): Case {
  const spread = 60 * random.next();
  const parts = Array.from({ length: 1 + random.below(4) }, (): Part => ({
    far: randomLevel(random),
    near: random.next() < 0.5 ? randomLevel(random) : undefined,
    sdM: 1 + random.below(8),
    moved: random.next() < 0.5 ? [0, 0] : [12 * random.normal(), 8 * random.normal()],
    clouds: Array.from({ length: random.below(15) }, () => ({
      weight: random.next() / 20,
      along: 30 + spread * random.normal(),
      across: spread * random.normal(),
    })),
  }));
  return { parts, u: 20 * random.normal(), v: -30 + 20 * random.normal(), bearing: 7 * random.next() };
}

/** Lays a case in a room as `layout.ts` says and sums it. */
function summed(make: MakeKernel, { parts, u, v, bearing }: Case): Total {
  const levels = parts.flatMap(({ far, near }) => (near === undefined ? [far] : [far, near]));
  const grids = levels.flatMap(({ dry, out, wet }) => [dry, out, wet].filter((g) => g !== undefined));
  const most = parts.reduce((sum, p) => sum + p.clouds.length, 0);
  const sizes = [
    ...grids.map((g) => g.length),
    ...levels.map(() => LEVEL_BYTES / 4),
    (CLOUDS_HEAD_BYTES + parts.length * PART_BYTES + most * SINGLE_BYTES) / 4,
    (SUM_WET + most * WET_BYTES) / 4,
  ];
  const room = new Room(
    sizes.reduce((sum, n) => sum + bytesOf(n), 0),
    make,
  );
  const view = new DataView(room.kernel.buffer);
  const set = (at: number, value: number): void => view.setFloat32(at, value, true);
  const setInt = (at: number, value: number): void => view.setInt32(at, value, true);
  const layGrid = (grid: Float32Array | undefined): number => {
    if (grid === undefined) return 0;
    const piece = room.floats(grid.length);
    piece.set(grid);
    return piece.byteOffset;
  };
  const layLevel = (level: Level | undefined): number => {
    if (level === undefined) return 0;
    const at = room.floats(LEVEL_BYTES / 4).byteOffset;
    set(at + LEVEL_U0, level.u0);
    set(at + LEVEL_V0, level.v0);
    set(at + LEVEL_PER_M, level.perM);
    setInt(at + LEVEL_COLUMNS, level.columns);
    setInt(at + LEVEL_ROWS, level.rows);
    setInt(at + LEVEL_DRY, layGrid(level.dry));
    setInt(at + LEVEL_OUT, layGrid(level.out));
    setInt(at + LEVEL_WET, layGrid(level.wet));
    return at;
  };
  const clouds = room.floats(sizes.at(-2) ?? 0).byteOffset;
  setInt(clouds + CLOUDS_PARTS, parts.length);
  let at = clouds + CLOUDS_HEAD_BYTES + parts.length * PART_BYTES;
  parts.forEach((part, p) => {
    const record = clouds + CLOUDS_HEAD_BYTES + p * PART_BYTES;
    const grouped = 4 * Math.floor(part.clouds.length / 4);
    setInt(record + PART_LEVEL, layLevel(part.far));
    setInt(record + PART_NEAR, layLevel(part.near));
    setInt(record + PART_GROUPS, grouped / 4);
    setInt(record + PART_SINGLES, part.clouds.length - grouped);
    set(record + PART_SD_M, part.sdM);
    set(record + PART_MOVED_ALONG, part.moved[0]);
    set(record + PART_MOVED_ACROSS, part.moved[1]);
    part.clouds.forEach((cloud, n) => {
      const figures = [cloud.weight, cloud.along, cloud.across];
      figures.forEach((x, k) => set(n < grouped ? at + 16 * k + 4 * (n % 4) : at + 4 * k, x));
      if (n >= grouped) at += SINGLE_BYTES;
      else if (n % 4 === 3) at += GROUP_BYTES;
    });
  });
  const out = room.floats(sizes.at(-1) ?? 0);
  out.set([NEAR.u0, NEAR.u1, NEAR.v0, NEAR.v1], SUM_NEAR / 4);
  room.kernel.sum(clouds, u, v, Math.sin(bearing), Math.cos(bearing), LEAST, out.byteOffset);
  const figure = (byte: number): number => out[byte / 4] ?? NaN;
  const count = view.getInt32(out.byteOffset + SUM_WET_COUNT, true);
  const wet = Array.from({ length: count }, (_, i): Wet => {
    const from = (SUM_WET + i * WET_BYTES) / 4;
    const [weight = NaN, along = NaN, across = NaN, sdM = NaN] = out.subarray(from, from + 4);
    return { weight, along, across, sdM };
  });
  return { figures: [SUM_AHEAD, SUM_REPLAYED, SUM_FEW, SUM_FEW_ALONG, SUM_FEW_ACROSS].map(figure), wet };
}

/** The same by its definition, cloud by cloud. */
function byDefinition({ parts, u, v, bearing }: Case): Total {
  const figures = [0, 0, 0, 0, 0];
  const wet: Wet[] = [];
  const put = (k: number, x: number): void => void (figures[k] = (figures[k] ?? 0) + x);
  for (const { far, near, sdM, clouds, moved } of parts) {
    for (const still of clouds) {
      const cloud = { ...still, along: still.along + moved[0], across: still.across + moved[1] };
      const x = u + cloud.along * Math.sin(bearing) + cloud.across * Math.cos(bearing);
      const y = v + cloud.along * Math.cos(bearing) - cloud.across * Math.sin(bearing);
      const level = near !== undefined && x > NEAR.u0 && x < NEAR.u1 && y > NEAR.v0 && y < NEAR.v1 ? near : far;
      put(0, cloud.weight * bilinear(level, level.dry, x, y));
      if (level.out !== undefined) put(1, cloud.weight * bilinear(level, level.out, x, y));
      if (level.wet === undefined) continue;
      const share = cloud.weight * bilinear(level, level.wet, x, y);
      if (share > LEAST) wet.push({ ...cloud, weight: share, sdM });
      else [1, cloud.along, cloud.across].forEach((by, k) => put(2 + k, share * by));
    }
  }
  return { figures, wet };
}

function bilinear(level: Level, grid: Float32Array, u: number, v: number): number {
  const held = (x: number, last: number): number => Math.min(last, Math.max(0, x));
  const x = held((u - level.u0) * level.perM, level.columns - 1);
  const y = held((v - level.v0) * level.perM, level.rows - 1);
  const [i, j] = [Math.min(level.columns - 2, Math.floor(x)), Math.min(level.rows - 2, Math.floor(y))];
  const sample = (a: number, b: number): number => grid[(j + b) * level.columns + i + a] ?? NaN;
  const along = (b: number): number => sample(0, b) + (x - i) * (sample(1, b) - sample(0, b));
  return along(0) + (y - j) * (along(1) - along(0));
}

/**
 * Places are rounded to some 1e-5 of a cell, where these random grids change by up to 6 from cell to cell: far rougher than blurred ones.
 * The metres of the few are up to 100 times their share.
 */
const WITHIN = [2e-4, 2e-4, 2e-5, 1e-3, 1e-3];

function expectAlike(a: Total, b: Total): void {
  a.figures.forEach((x, k) => expect(Math.abs(x - (b.figures[k] ?? NaN))).toBeLessThan(WITHIN[k] ?? 0));
  expect(a.wet).toHaveLength(b.wet.length);
  const byPlace = (x: Wet, y: Wet): number => x.along - y.along;
  const others = b.wet.toSorted(byPlace);
  a.wet.toSorted(byPlace).forEach((w, i) => {
    const other = others[i];
    expect(Math.abs(w.weight - (other?.weight ?? NaN))).toBeLessThan(2e-5);
    expect(Math.abs(w.along - (other?.along ?? NaN))).toBeLessThan(1e-4);
    expect(Math.abs(w.across - (other?.across ?? NaN))).toBeLessThan(1e-4);
    expect(w.sdM).toBe(other?.sdM);
  });
}

describe('a sum over clouds by vectors, and its plain twin', () => {
  const random = randomFrom(7);
  const cases = Array.from({ length: 400 }, () => randomCase(random));

  it('come to what the definition says, for 400 random strokes, near and far, on and off the grids', () => {
    for (const c of cases) {
      const wanted = byDefinition(c);
      expectAlike(summed(vector, c), wanted);
      expectAlike(summed(plainKernel, c), wanted);
      expect(wanted.figures).toHaveLength(5);
    }
  });

  it('had near and far clouds, long lists and few wet balls to try it on', () => {
    const totals = cases.map(byDefinition);
    expect(totals.some((t) => t.wet.length > 8)).toBe(true);
    expect(totals.some((t) => (t.figures[2] ?? 0) > 0)).toBe(true);
    expect(cases.some((c) => c.parts.some((p) => p.near !== undefined && p.clouds.length > 8))).toBe(true);
  });
});
