import { openSync } from 'fontkit';
import { describe, expect, test } from 'vitest';
import type { Font } from '../marks.ts';
import { specimen } from '../testdata/specimen.ts';
import { italic, sans, serif } from '../text/fonts.ts';
import { LETTERS, WIDTHS } from '../text/widths.ts';
import { facesOf } from './facesOf.ts';
import { isFor, SUBSETS, woff2Path } from './fontFiles.ts';

const FONTS: readonly Font[] = [
  serif(10),
  italic(10),
  { ...serif(10), weight: 700 },
  ...([400, 500, 600, 700] as const).map((weight) => sans(10, weight)),
];

describe('the embedded faces', () => {
  test('are those of the cuts used, and of each the parts whose letters occur', async () => {
    const rules = (await facesOf(specimen())).split('\n');
    const named = rules.map((rule) =>
      /family:'(.*?)';font-weight:(\d+);font-style:(\w+).*range:(U\+\w+)/.exec(rule)?.slice(1),
    );
    expect(named).toEqual([
      ['Barlow Semi Condensed', '400', 'normal', 'U+20'],
      ['Barlow Semi Condensed', '500', 'normal', 'U+20'],
      ['Barlow Semi Condensed', '600', 'normal', 'U+100'],
      ['Barlow Semi Condensed', '600', 'normal', 'U+20'],
      ['Barlow Semi Condensed', '700', 'normal', 'U+20'],
      ['Libre Caslon Text', '400', 'italic', 'U+20'],
      ['Libre Caslon Text', '400', 'normal', 'U+20'],
      ['Libre Caslon Text', '700', 'normal', 'U+20'],
    ]);
    for (const rule of rules)
      expect(rule).toMatch(/src:url\(data:font\/woff2;base64,[\w+/]{4000,}=*\)format\('woff2'\)\}$/);
    expect(await facesOf({ marks: [] })).toBe('');
  });

  test('have every letter whose width charts know', () => {
    const codes = LETTERS.split(' ').map((hex) => Number.parseInt(hex, 16));
    for (const [i, font] of FONTS.entries()) {
      const widths = Object.values(WIDTHS)[i]?.split(' ').map(Number) ?? [];
      for (const subset of SUBSETS) {
        const file = openSync(woff2Path(font, subset));
        if (!('hasGlyphForCodePoint' in file)) throw new Error('several fonts in one file');
        const lacking = codes.filter(
          (c, j) => (widths[j] ?? -1) > 0 && isFor(subset, c) && !file.hasGlyphForCodePoint(c),
        );
        expect(String.fromCodePoint(...lacking)).toBe('');
      }
    }
    const homeless = codes.filter((c) => !SUBSETS.some((s) => isFor(s, c)));
    expect(String.fromCodePoint(...homeless)).toBe('');
    for (const sign of '−±¾°·–’') expect(codes).toContain(sign.codePointAt(0));
  });
});
