import { canPlay, distanceM, planHole, playerModel, solveHole, type PlanePoint } from '@leeway/engine';
import { expect, test } from 'vitest';
import { groundAt } from './groundAt.ts';
import { indexChart } from './indexChart.ts';
import { boxOfText } from './text/measure.ts';
import type { Dots, Text } from './marks.ts';
import { SALT_HOLE } from './testdata/saltHole.ts';

const SIZE = { widthPx: 104, heightPx: 188 };
const part = (alongM: number) => ({ weight: 1, alongM, acrossM: 0, sdAlongM: 5, sdAcrossM: 6, corr: 0 });
const player = playerModel({
  version: 1,
  name: 'Pat',
  patterns: [190, 120, 60].map((carryM) => ({ club: `club ${carryM}`, swing: 'full', components: [part(carryM)] })),
});
const choices = planHole(solveHole(SALT_HOLE, player), player).shots.map(({ choice }) => choice);
const drawn = indexChart({ ground: SALT_HOLE, choices, shot: 1 }, SIZE, 'yd');

test('every shot is numbered beside its spot, the shown one in bold, all on the sheet', () => {
  expect(canPlay(player)).toBe(true);
  const texts = drawn.marks.filter((m): m is Text => m.kind === 'text');
  expect(texts.map(({ text, font }) => [text, font.weight])).toEqual(
    choices.map((_, i) => [`${i + 1}`, i === 1 ? 700 : 400]),
  );
  for (const text of texts)
    for (const { x, y } of boxOfText(text)) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(SIZE.widthPx);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(SIZE.heightPx);
    }
});

test('its dots lie where the spots are', () => {
  const dots = drawn.marks.filter((m): m is Dots => m.kind === 'dots').flatMap((m) => m.at);
  const places: PlanePoint[] = dots.map((q) => groundAt(drawn.placing, q));
  expect(places).toHaveLength(choices.length);
  choices.forEach(({ answer }, i) => {
    const place = places[i];
    expect(place && distanceM(place, answer.spot)).toBeLessThan(1e-6);
  });
});

test('it is told in words', () => {
  expect(drawn.description).toMatch(
    /shot 1 finishes \d+ yd on, shot 2 finishes \d+ yd on.*; shot 2 is the one shown\.$/,
  );
  expect(indexChart({ ground: SALT_HOLE, choices: [] }, SIZE, 'm').description).toMatch(/\d metres$/);
});
