import { describe, expect, test } from 'vitest';
import { italic, sans } from './fonts.ts';
import { widthPx } from './measure.ts';
import { fitting, wrapped } from './wrap.ts';

const LONG = 'Map data of some careful surveyors, under a licence of many words: example.org/copyright';

describe('words in a narrow column', () => {
  test('keep all words in order, no line wider than it may be', () => {
    const lines = wrapped(LONG, sans(13), 200);
    expect(lines.join(' ')).toBe(LONG);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(widthPx(line, sans(13))).toBeLessThanOrEqual(200);
  });

  test('a word too wide stands alone', () => {
    expect(wrapped('a incomprehensibilities b', sans(13), 40)).toEqual(['a', 'incomprehensibilities', 'b']);
  });

  test('a long name is set smaller, but not below the least size; a short one is left alone', () => {
    expect(fitting('The Saltings', italic(26), 216, 15)).toEqual(italic(26));
    const smaller = fitting('The Long Way Round', italic(26), 150, 10);
    expect(widthPx('The Long Way Round', smaller)).toBeLessThanOrEqual(150);
    expect(fitting(LONG, italic(26), 100, 15).sizePx).toBe(15);
  });
});
