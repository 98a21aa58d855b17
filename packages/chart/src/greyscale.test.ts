import { describe, expect, test } from 'vitest';
import type { Role } from './marks.ts';
import { PALETTES, type Palette } from './palette.ts';

/** Relative luminance of a colour, and contrast of two (WCAG 2.2). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
};

/** What each ink's words may stand on: contour figures on grass, names on anything, words with a rim on the rim alone. */
const STANDS_ON: { readonly [R in Role]?: readonly Role[] } = {
  contour: ['sheet', 'rough', 'green'],
  ink: ['sheet', 'rough', 'green', 'sea', 'sand', 'scrub'],
  'ink-2': ['sheet'],
  buoy: ['sheet'],
};

describe.each(Object.entries(PALETTES))('in %s light, seen in grey', (_, palette: Palette) => {
  test.each(Object.entries(STANDS_ON))('words in %s stand out by 4.5 : 1 from what is under them', (ink, grounds) => {
    for (const ground of grounds) expect(contrast(palette[ink as Role], palette[ground])).toBeGreaterThanOrEqual(4.5);
  });
});
