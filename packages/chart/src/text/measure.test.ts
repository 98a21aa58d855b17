import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { widthsFile } from '../make/widthsFile.ts';
import { sans, serif } from './fonts.ts';
import { boxOfText, widthPx } from './measure.ts';

describe('widths of text', () => {
  test('the committed table is the one the fonts give', async () => {
    const committed = readFileSync(new URL('widths.ts', import.meta.url), 'utf8');
    expect(committed).toBe(await widthsFile());
  });

  test('grow with the size, add up by letter, and count the tracking', () => {
    expect(widthPx('3.1', sans(20))).toBeCloseTo(2 * widthPx('3.1', sans(10)), 10);
    expect(widthPx('lie flag', serif(14))).toBeCloseTo(widthPx('lie ', serif(14)) + widthPx('flag', serif(14)), 10);
    expect(widthPx('flag', serif(14, 2)) - widthPx('flag', serif(14))).toBeCloseTo(8, 10);
  });

  test('a letter that the font lacks takes room', () => {
    expect(widthPx('谷', sans(10))).toBeGreaterThan(5);
  });

  test('a box turns about its anchor and keeps its size', () => {
    const text = { text: '3.1', font: sans(12), at: { x: 40, y: 30 }, anchor: 'middle' } as const;
    const [a, b, c] = boxOfText({ ...text, turnRad: 0 });
    const [d, e, f] = boxOfText({ ...text, turnRad: 1 });
    expect(Math.hypot(e.x - d.x, e.y - d.y)).toBeCloseTo(b.x - a.x, 9);
    expect(Math.hypot(f.x - e.x, f.y - e.y)).toBeCloseTo(c.y - b.y, 9);
    expect(Math.hypot(d.x - 40, d.y - 30)).toBeCloseTo(Math.hypot(a.x - 40, a.y - 30), 9);
  });
});
