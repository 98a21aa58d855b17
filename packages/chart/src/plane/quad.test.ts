import { describe, expect, test } from 'vitest';
import { inQuad, quadOf, quadsMeet, widened } from './quad.ts';

const box = quadOf({ left: 0, top: 0, right: 20, bottom: 10 });
/** A square on its corner, its middle at a place. */
const diamond = (x: number, y: number, reach: number) =>
  [
    { x, y: y - reach },
    { x: x + reach, y },
    { x, y: y + reach },
    { x: x - reach, y },
  ] as const;

describe('boxes', () => {
  test('overlap only when no side parts them', () => {
    expect(quadsMeet(box, quadOf({ left: 19, top: 9, right: 30, bottom: 30 }))).toBe(true);
    expect(quadsMeet(box, quadOf({ left: 20, top: 0, right: 30, bottom: 10 }))).toBe(false);
    // The box of the diamond overlaps, the diamond itself does not.
    expect(quadsMeet(box, diamond(26, 16, 10))).toBe(false);
    expect(quadsMeet(box, diamond(24, 14, 10))).toBe(true);
  });

  test('hold the places between their sides, turned or not', () => {
    expect(inQuad({ x: 3, y: 3 }, box)).toBe(true);
    expect(inQuad({ x: 3, y: 11 }, box)).toBe(false);
    expect(inQuad({ x: 55, y: 55 }, diamond(50, 50, 12))).toBe(true);
    expect(inQuad({ x: 58, y: 58 }, diamond(50, 50, 12))).toBe(false);
  });

  test('grow on every side', () => {
    expect(widened(box, 2)).toEqual(quadOf({ left: -2, top: -2, right: 22, bottom: 12 }));
    expect(inQuad({ x: 58, y: 58 }, widened(diamond(50, 50, 12), 4))).toBe(true);
  });
});
