import { describe, expect, test } from 'vitest';
import type { Role } from './marks.ts';
import { type Light, PALETTES } from './palette.ts';

/** Relative luminance of sRGB, WCAG 2.2. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const share = Number.parseInt(colour.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21, WCAG 2.2. */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

/** Inks and what they are read on. The spot’s figures have a rim of the sheet. */
const READ: readonly (readonly [Role, readonly Role[]])[] = [
  ['ink', ['paper', 'sheet', 'rough', 'green', 'sea', 'sand', 'scrub']],
  ['ink-2', ['paper', 'sheet']],
  ['contour', ['sheet', 'rough', 'green']],
  ['buoy', ['sheet']],
];

describe('the palettes', () => {
  test.each([
    ['paper', 4.5],
    ['sun', 7],
    ['print', 12],
  ] as const satisfies readonly (readonly [Light, number])[])(
    'what is read in %s stands out by %d : 1',
    (light, least) => {
      const palette = PALETTES[light];
      for (const [ink, grounds] of READ)
        for (const ground of grounds) expect(contrast(palette[ink], palette[ground])).toBeGreaterThanOrEqual(least);
    },
  );

  test('print is black, white and greys', () => {
    for (const colour of Object.values(PALETTES.print)) expect(colour).toMatch(/^#(..)\1\1$/);
  });
});
