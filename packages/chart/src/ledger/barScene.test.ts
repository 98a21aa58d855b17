import { expect, test } from 'vitest';
import { barScene } from './barScene.ts';

const scale = { from: -0.5, to: 1.5 };
const size = { widthPx: 200, heightPx: 30 };
const scene = (shown: boolean) => barScene({ mean: 1, lo80: 0.5, hi80: 3, shown }, scale, size, 'Number: 1.0');
const strokes = (shown: boolean) =>
  scene(shown).marks.flatMap((m) => (m.kind === 'stroke' ? [{ width: m.widthPx, lines: m.lines }] : []));

test('the bar ends at its mean, the whiskers at their interval, held inside the picture', () => {
  expect(strokes(true).find((m) => m.width === 2.4)!.lines[0]![0]!.x).toBe(150);
  const [whisker] = strokes(true).find((m) => m.width === 1.2)!.lines;
  expect(whisker!.map((p) => p.x)).toEqual([100, 200]);
});

test('what is shown is hatched on the slant, what may be chance is broken', () => {
  const slanted = (shown: boolean) =>
    strokes(shown).some(({ lines }) => lines.some(([a, b]) => a!.x !== b!.x && a!.y !== b!.y));
  expect([slanted(true), slanted(false)]).toEqual([true, false]);
});
