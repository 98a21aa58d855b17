import { expect, test } from 'vitest';
import { kernelOf, smoothed, spread } from './spread.ts';

const COLUMNS = 30;
const known = Int32Array.from(
  Array.from({ length: COLUMNS * COLUMNS }, (_, i) => i).filter((i) => i % COLUMNS < 20 + (Math.floor(i / 90) % 3)),
);
const kernel = kernelOf(1.3);

function smooth(f: (x: number, y: number) => number): Float64Array {
  const [values, ones] = [new Float64Array(COLUMNS * COLUMNS), new Float64Array(COLUMNS * COLUMNS)];
  for (const i of known) {
    values[i] = f(i % COLUMNS, Math.floor(i / COLUMNS));
    ones[i] = 1;
  }
  return smoothed(values, known, spread(ones, COLUMNS, kernel), COLUMNS, kernel);
}

test('a kernel sums to 1 and is even', () => {
  expect(kernel.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
  expect(kernel).toEqual(kernel.toReversed());
});

test('smoothing keeps a level exactly, a slope inside, and at the edge of what is known most of it', () => {
  const [level, sloped] = [smooth(() => 3), smooth((x) => x)];
  for (const i of known) expect(level[i]).toBeCloseTo(3, 12);
  expect(sloped[9 + 15 * COLUMNS]).toBeCloseTo(9, 9);
  // the mean of half a normal kernel lies 0.8 standard deviations in
  const lean = Math.max(...known.map((i) => Math.abs((sloped[i] ?? NaN) - (i % COLUMNS))));
  expect(lean).toBeLessThan(0.4 * 0.8 * 1.3);
});

test('what is far from everything known is not known', () => {
  expect(smooth(() => 3)[COLUMNS - 1]).toBeNaN();
});
