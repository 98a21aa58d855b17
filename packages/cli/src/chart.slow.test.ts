import { DEMO } from '@leeway/demo';
import { describe, expect, test } from 'vitest';
import { contourErrors, cutOff, drawAll, overlaps } from './testdata/sheetChecks.ts';

const demo = drawAll(DEMO, '7');

describe('the demo hole’s sheets', () => {
  test('no label stands on another, and none is cut off', () => {
    expect(demo.sheets.length).toBeGreaterThan(2);
    for (const { scene } of demo.sheets) {
      expect(overlaps(scene)).toEqual([]);
      expect(cutOff(scene)).toEqual([]);
    }
  });

  test('the contours tell the truth: half of 400 places within 0.01 of the strokes there, 19 in 20 within 0.03', () => {
    for (const sheet of demo.sheets) {
      const errors = contourErrors(demo, sheet, 400);
      expect(errors[200]).toBeLessThan(0.01);
      expect(errors[379]).toBeLessThan(0.0301);
    }
  });
});
