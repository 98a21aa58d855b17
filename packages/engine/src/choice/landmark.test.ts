import { expect, test } from 'vitest';
import { landmarksOf } from './landmark.ts';
import { box, groundWith } from './testdata/madeUp.ts';

const green = box('green', 'green', [-10, 90, 10, 110]);
const words = (areas: Parameters<typeof groundWith>[0]): (string | undefined)[] => {
  const marks = landmarksOf(groundWith(areas));
  return areas.map((_, i) => marks.get(i)?.words);
};

test('one of a kind needs no side; two are told apart by theirs', () => {
  expect(words([green, box('b', 'bunker', [-20, 95, -12, 105])])).toEqual(['the green', 'the bunker']);
  expect(
    words([
      green,
      box('l', 'bunker', [-20, 95, -12, 105]),
      box('r', 'bunker', [12, 95, 20, 105]),
      box('f', 'bunker', [-4, 76, 4, 86]),
      box('k', 'bunker', [-4, 114, 4, 120]),
    ]),
  ).toEqual(['the green', 'the left bunker', 'the right bunker', 'the front bunker', 'the back bunker']);
});

test('two on one side are named together', () => {
  const right = [box('r1', 'bunker', [12, 92, 20, 99]), box('r2', 'bunker', [12, 101, 20, 108])];
  const left = box('l', 'bunker', [-20, 95, -12, 105]);
  const marks = landmarksOf(groundWith([green, ...right, left]));
  expect(marks.get(1)).toBe(marks.get(2));
  expect(marks.get(1)).toMatchObject({ words: 'the right bunkers', areas: [1, 2] });
});

test('far from the green a thing is left or right of the line of the hole; long water is a creek', () => {
  expect(
    words([
      green,
      box('w1', 'penalty', [-30, 10, -20, 22]),
      box('w2', 'penalty', [-60, 50, 60, 53]),
      box('t1', 'recovery', [-60, 0, -40, 30]),
      box('t2', 'recovery', [40, 0, 60, 30]),
    ]),
  ).toEqual(['the green', 'the pond', 'the creek', 'the left trees', 'the right trees']);
});

test('a mapped name wins, and out of bounds has no side', () => {
  const water = { ...box('w', 'penalty', [-30, 60, 30, 70]), name: 'Tolvane Creek' };
  expect(words([green, water, box('o', 'out', [60, 0, 90, 200])])).toEqual([
    'the green',
    'Tolvane Creek',
    'out of bounds',
  ]);
});

test('drawn rough and bare ground are one rough', () => {
  const marks = landmarksOf(groundWith([box('r', 'rough', [-50, 0, 50, 90]), green]));
  expect(marks.get(0)).toBe(marks.get(-1));
  expect(marks.get(-1)).toMatchObject({ words: 'the rough', areas: [-1, 0] });
});
