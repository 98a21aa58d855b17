import { expect, it } from 'vitest';
import { puttingPrior, puttingRows } from './putting.ts';
import { decelerationOf, SlopedPutts } from './slopedPutts.ts';

const parameters = puttingPrior({ handicapIndex: 12 });
const rows = puttingRows(parameters);
const putts = new SlopedPutts(parameters, rows);
const lengthsM = [0.6, 1, 2, 3.5, 6, 10, 18];

it('a flat green is the flat model exactly', () => {
  for (const d of lengthsM) expect(putts.more(d, { up: 0, across: 0 })).toBe(0);
});

it('below the hole never costs more than above it, nor slope less than none across the line', () => {
  for (const d of lengthsM) {
    for (const up of [0.005, 0.01, 0.02, 0.03, 0.05]) {
      for (const across of [0, 0.01, 0.03]) {
        expect(putts.more(d, { up, across })).toBeLessThanOrEqual(putts.more(d, { up: -up, across }) + 1e-12);
        expect(putts.more(d, { up: 0, across })).toBeGreaterThanOrEqual(0);
        expect(putts.more(d, { up, across: -across })).toBe(putts.more(d, { up, across }));
      }
    }
  }
});

it('dearer the steeper down, and the more it breaks', () => {
  for (const d of [2, 6, 10]) {
    const down = [0, 0.01, 0.02, 0.03].map((s) => putts.more(d, { up: -s, across: 0 }));
    const aside = [0, 0.01, 0.02, 0.04].map((s) => putts.more(d, { up: 0, across: s }));
    for (const list of [down, aside]) list.slice(1).forEach((x, i) => expect(x).toBeGreaterThanOrEqual(list[i]!));
    expect(down[3]!).toBeGreaterThan(0.03);
  }
});

it('a ball holds on ground less steep than its rolling resistance', () => {
  // 1.83 m/s stopped over 3 m: 0.558 m/s², a slope of 5.7 in 100
  expect(decelerationOf(3)).toBeCloseTo(0.558, 3);
  const quick = new SlopedPutts(parameters, rows, 3);
  expect([quick.holds(0.056), quick.holds(0.058)]).toEqual([true, false]);
});
