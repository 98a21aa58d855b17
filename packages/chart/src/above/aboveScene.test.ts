import { describe, expect, it } from 'vitest';
import type { Dots, Stroke, Text } from '../marks.ts';
import type { FromAbove } from './above.ts';
import { aboveScene } from './aboveScene.ts';

const GOOD = { weight: 1, alongM: 140, acrossM: -3, sdAlongM: 8, sdAcrossM: 6, corr: 0.3 };
const SEEN: FromAbove = {
  title: '7-iron, full',
  units: 'm',
  balls: [
    { alongM: 140, acrossM: 0, mishit: false },
    { alongM: 150, acrossM: 10, mishit: false },
    { alongM: 90, acrossM: -12, mishit: true },
  ],
  parts: [GOOD],
};
const scene = aboveScene(SEEN, { widthPx: 400, heightPx: 420 });
const dots = scene.marks.filter((m): m is Dots => m.kind === 'dots' && m.layer === 'pattern');

describe('balls from above', () => {
  it('lie at one scale both ways, further up and right to the right', () => {
    const [a, b] = dots.find((m) => m.lineWidthPx === undefined)!.at;
    expect(b!.x - a!.x).toBeCloseTo(10 * scene.placing.pxPerM, 9);
    expect(a!.y - b!.y).toBeCloseTo(10 * scene.placing.pxPerM, 9);
    expect(a!.x).toBeCloseTo(200, 9);
  });

  it('are told from the place where they were hit', () => {
    const { origin, pxPerM } = scene.placing;
    const [ring] = dots.find((m) => m.lineWidthPx !== undefined)!.at;
    expect((origin.y - ring!.y) / pxPerM).toBeCloseTo(90, 9);
    expect((ring!.x - origin.x) / pxPerM).toBeCloseTo(-12, 9);
  });

  it('stand in lines that hold 50, 80 and 95 in 100: those of a lone normal, by the exponential of its squares', () => {
    const lines = scene.marks.filter((m): m is Stroke => m.kind === 'stroke' && m.role === 'contour');
    expect(lines).toHaveLength(3);
    const { origin, pxPerM } = scene.placing;
    [0.5, 0.8, 0.95].forEach((share, i) => {
      for (const p of lines[i]!.lines.flat()) {
        const u = ((origin.y - p.y) / pxPerM - GOOD.alongM) / GOOD.sdAlongM;
        const v = ((p.x - origin.x) / pxPerM - GOOD.acrossM) / GOOD.sdAcrossM;
        const square = (u * u - 2 * GOOD.corr * u * v + v * v) / (1 - GOOD.corr ** 2);
        expect(1 - Math.exp(-square / 2)).toBeCloseTo(share, 1);
      }
    });
  });

  it('show the ball that is being told, and the same in words', () => {
    const told = aboveScene({ ...SEEN, told: { alongM: 130, acrossM: 5 } }, { widthPx: 400, heightPx: 420 });
    expect(told.marks.some((m) => m.kind === 'dots' && m.layer === 'signs')).toBe(true);
    expect(scene.description).toBe(
      '7-iron, full from above: 3 balls, 1 of them mishit. Good strikes pitch about 140 metres out, 3 left of the line.',
    );
    const figures = scene.marks.filter((m): m is Text => m.kind === 'text').map((m) => m.text);
    expect(figures).toEqual(expect.arrayContaining(['100', '140', '50', '80', '95']));
  });

  it('have a window about a known carry before the first ball', () => {
    const empty = aboveScene(
      { title: 'PW, full', units: 'yd', balls: [], aboutM: 100 },
      { widthPx: 300, heightPx: 560 },
    );
    const { origin, pxPerM } = empty.placing;
    expect((origin.y - 12) / pxPerM).toBeGreaterThan(115);
    expect((origin.y - 548) / pxPerM).toBeLessThan(80);
  });
});
