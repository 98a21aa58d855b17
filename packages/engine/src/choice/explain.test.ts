import { expect, test } from 'vitest';
import { explain } from './explain.ts';
import { landmarksOf } from './landmark.ts';
import { box, groundWith, optionOf, part, pricedWith } from './testdata/madeUp.ts';

const GREEN = 0;
const POND = 1;
const BUNKER = 2;
const marks = landmarksOf(
  groundWith([
    box('g', 'green', [-10, 90, 10, 110]),
    box('p', 'penalty', [-40, 80, -12, 110]),
    box('b', 'bunker', [12, 95, 20, 105]),
  ]),
);
const stroke = { option: optionOf([part()]), bearingRad: 0 };

test('the danger whose extra balls cost most explains the difference, with both chances', () => {
  const here = pricedWith(stroke, [
    [GREEN, 0.85, 2.9],
    [POND, 0.03, 4.5],
    [BUNKER, 0.12, 3.5],
  ]);
  const there = pricedWith(stroke, [
    [GREEN, 0.8, 2.8],
    [POND, 0.14, 4.5],
    [BUNKER, 0.06, 3.5],
  ]);
  const because = explain(marks, here, there);
  expect(because).toMatchObject({ kind: 'danger', here: 0.03, there: 0.14 });
  expect(because.kind === 'danger' && because.landmark.words).toBe('the pond');
});

test('a dear area that both strokes find as often explains nothing', () => {
  const here = pricedWith(stroke, [
    [GREEN, 0.9, 2.8],
    [POND, 0.1, 4.5],
  ]);
  const there = pricedWith(stroke, [
    [GREEN, 0.9, 2.9],
    [POND, 0.1, 4.5],
  ]);
  expect(explain(marks, here, there).kind).toBe('putt');
});

test('more balls on the green explain a difference that no danger does', () => {
  const here = pricedWith(stroke, [
    [GREEN, 0.7, 2.9],
    [-1, 0.3, 3.4],
  ]);
  const there = pricedWith(stroke, [
    [GREEN, 0.5, 2.9],
    [-1, 0.5, 3.4],
  ]);
  expect(explain(marks, here, there)).toEqual({ kind: 'green', here: 0.7, there: 0.5 });
});
