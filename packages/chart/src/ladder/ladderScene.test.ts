import { describe, expect, it } from 'vitest';
import type { Mark, Text } from '../marks.ts';
import { quadsMeet } from '../plane/quad.ts';
import { boxOfText } from '../text/measure.ts';
import type { Ladder, Rung } from './ladder.ts';
import { ladderScene } from './ladderScene.ts';

const rung = (club: string, carryM: number, more: Partial<Rung> = {}): Rung => ({
  club,
  swing: 'full',
  full: true,
  carryM,
  lo80M: carryM - 3,
  hi80M: carryM + 3,
  balls: [carryM - 6, carryM + 2, carryM * 0.6].map((m, i) => ({ carryM: m, mishit: i === 2 })),
  ...more,
});

const LADDER: Ladder = {
  player: 'Kim',
  units: 'm',
  rungs: [
    rung('9-iron', 110),
    rung('7-iron', 130, { claimedM: 140 }),
    rung('7-iron', 127, { swing: 'three-quarter', full: false }),
    rung('driver', 190),
  ],
  gaps: [{ fromM: 140, toM: 180 }],
};
const scene = ladderScene(LADDER);
const texts = scene.marks.filter((m): m is Text => m.kind === 'text');
const placeOf = (words: string): Text['at'] => texts.find((t) => t.text === words)?.at ?? { x: NaN, y: NaN };
const solid = (m: Mark): boolean => m.kind === 'dots' && m.layer === 'pattern' && m.lineWidthPx === undefined;

describe('the ladder as a sheet', () => {
  it('has a row a club, longest first, with its balls counted', () => {
    const clubs = texts.filter((t) => t.at.x === 28 && t.font.face === 'serif' && t.font.sizePx === 17);
    expect(clubs.map((t) => t.text)).toEqual(['driver', '7-iron', '9-iron']);
    expect(clubs.map((t) => t.at.y)).toEqual(clubs.map((t) => t.at.y).toSorted((a, b) => a - b));
    expect(texts.some((t) => t.text === '6')).toBe(true);
  });

  it('lays carries along one scale: 190 stands as far beyond 110 as 80 m are', () => {
    const pxPerM = (placeOf('120').x - placeOf('100').x) / 20;
    expect(placeOf('190').x - placeOf('110').x).toBeCloseTo(80 * pxPerM, 6);
    expect(pxPerM).toBeGreaterThan(2);
  });

  it('tells mishits from good balls, and keeps every ball that the scale reaches', () => {
    const count = (marks: readonly Mark[]): number =>
      marks.reduce((n, m) => n + (m.kind === 'dots' ? m.at.length : 0), 0);
    expect(count(scene.marks.filter(solid))).toBe(8);
    const rings = scene.marks.filter((m) => m.kind === 'dots' && m.layer === 'pattern' && m.lineWidthPx !== undefined);
    // 60 % of 110, 127 and 130 lie left of the scale, which starts at 80
    expect(count(rings)).toBe(1);
  });

  it('puts no figure over another', () => {
    const figures = texts.filter((t) => t.layer === 'names' && t.font.face === 'sans');
    figures.forEach((a, i) => {
      for (const b of figures.slice(i + 1))
        expect(quadsMeet(boxOfText(a), boxOfText(b)), `${a.text} and ${b.text}`).toBe(false);
    });
  });

  it('says the same in words', () => {
    expect(scene.title).toBe('The ladder of carries of Kim');
    expect(scene.description).toBe(
      'Carries in metres: driver 190, 7-iron 130, 7-iron ¾ 127, 9-iron 110. Gaps: 140 to 180.',
    );
  });
});
