import { describe, expect, it } from 'vitest';
import { randomFrom, type Random } from '../math/random.ts';
import { blurFloats } from './blurWork.ts';
import { plainKernel } from './plainKernel.ts';
import { bytesOf, Room, type MakeKernel } from './room.ts';
import { vectorKernel } from './vectorKernel.ts';

interface Case {
  readonly columns: number;
  readonly rows: number;
  readonly halves: boolean;
  readonly taps: readonly number[];
  readonly first: number;
  readonly patch: readonly [c0: number, c1: number, r0: number, r1: number];
}

const vector: MakeKernel = (bytes) => {
  const kernel = vectorKernel(bytes);
  if (kernel === undefined) throw new Error('no WebAssembly with vectors here');
  return kernel;
};

/** A blur of random figures between 0 and 6; outputs that it must not touch hold -1. */
function blurred(make: MakeKernel, c: Case, cells: Float32Array): Float32Array {
  const [outColumns, outRows] = c.halves ? [c.columns >> 1, c.rows >> 1] : [c.columns, c.rows];
  const work = blurFloats(c.columns, c.rows);
  const room = new Room(
    [cells.length, outColumns * outRows, work].reduce((sum, n) => sum + bytesOf(n), 0),
    make,
  );
  const from = room.floats(cells.length);
  const to = room.floats(outColumns * outRows).fill(-1);
  const at = room.floats(work);
  from.set(cells);
  at.set(c.taps);
  const [c0, c1, r0, r1] = c.patch;
  room.kernel.blur(
    from.byteOffset,
    c.columns,
    c.rows,
    to.byteOffset,
    outColumns,
    c.taps.length,
    c.first,
    c.halves,
    c0,
    c1,
    r0,
    r1,
    at.byteOffset,
  );
  return to;
}

/** The same by its definition, output by output. */
function byDefinition(c: Case, cells: Float32Array): number[] {
  const scale = c.halves ? 2 : 1;
  const [outColumns, outRows] = c.halves ? [c.columns >> 1, c.rows >> 1] : [c.columns, c.rows];
  const [c0, c1, r0, r1] = c.patch;
  const held = (x: number, y: number): number => {
    const column = Math.min(c.columns - 1, Math.max(0, x));
    return cells[Math.min(c.rows - 1, Math.max(0, y)) * c.columns + column] ?? NaN;
  };
  return Array.from({ length: outColumns * outRows }, (_, i) => {
    const [x, y] = [i % outColumns, Math.floor(i / outColumns)];
    if (x < c0 || x > c1 || y < r0 || y > r1) return -1;
    let sum = 0;
    c.taps.forEach((w, k) =>
      c.taps.forEach((z, l) => {
        sum += w * z * held(scale * x + c.first + k, scale * y + c.first + l);
      }),
    );
    return sum;
  });
}

function randomCase(random: Random): Case {
  const columns = 2 + random.below(70);
  const rows = 2 + random.below(50);
  const halves = columns > 3 && rows > 3 && random.next() < 0.5;
  const raw = Array.from({ length: 1 + random.below(25) }, () => random.next());
  const total = raw.reduce((a, b) => a + b, 0);
  const interval = (n: number): [number, number] => {
    const a = random.below(n);
    const b = random.below(n);
    return [Math.min(a, b), Math.max(a, b)];
  };
  const across = interval(halves ? columns >> 1 : columns);
  const down = interval(halves ? rows >> 1 : rows);
  return {
    columns,
    rows,
    halves,
    taps: raw.map((w) => w / total),
    first: -random.below(raw.length + 1),
    patch: [...across, ...down],
  };
}

const farthest = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((most, x, i) => Math.max(most, Math.abs(x - (b[i] ?? NaN))), 0);

/** A sum of at most 25 x 25 products of float32, twice rounded: some units in the last place of figures up to 6. */
const WITHIN = 5e-6;

describe('a blur by vectors, and its plain twin, for 300 random grids, taps and patches', () => {
  const random = randomFrom(20);
  const cases = Array.from({ length: 300 }, () => randomCase(random));

  it('come to what the definition says, touch nothing outside the patch, and agree', () => {
    for (const c of cases) {
      const cells = Float32Array.from({ length: c.columns * c.rows }, () => 6 * random.next());
      const fast = blurred(vector, c, cells);
      const plain = blurred(plainKernel, c, cells);
      expect(farthest(fast, plain)).toBeLessThan(WITHIN);
      expect(farthest(fast, byDefinition(c, cells))).toBeLessThan(WITHIN);
    }
  });
});
