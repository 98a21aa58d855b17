import { DEMO } from '@leeway/demo';
import { describe, expect, test } from 'vitest';
import { drawAll, queryErrors } from './testdata/sheetChecks.ts';

/** A hole over a creek, a short one, one with water along it, and a bent one. */
const HOLES = ['3', '4', '7', '12'];

describe('contours tell the truth', () => {
  test.each(HOLES)('on hole %s: of 200 places half are within 0.01 of a query, and 19 in 20 within 0.03', (hole) => {
    const drawn = drawAll(DEMO, hole);
    const each = Math.ceil(200 / drawn.sheets.length);
    const errors = drawn.sheets.flatMap((sheet) => queryErrors(drawn, sheet, each)).toSorted((a, b) => a - b);
    expect(errors.length).toBeGreaterThanOrEqual(200);
    expect(errors[errors.length >> 1]).toBeLessThan(0.01);
    expect(errors[Math.floor(0.95 * errors.length)]).toBeLessThan(0.03);
  });
});
