import { expect, test } from 'vitest';
import { landmarksOf } from './landmark.ts';
import { reasonsOf } from './reason.ts';
import type { Room } from './room.ts';
import type { ShownStroke } from './shown.ts';
import { box, groundWith, optionOf, part, pricedWith, solutionOf } from './testdata/madeUp.ts';

const creek = box('c', 'penalty', [-60, 80, 60, 86]);
const ground = groundWith([box('g', 'green', [-10, 90, 10, 110]), creek]);
const marks = landmarksOf(ground);
const inCreek = (northM: number): boolean => northM >= 80 && northM <= 86;
const solution = solutionOf(ground, { areaAt: (p) => (inCreek(p.northM) ? 1 : -1) });
const priced = pricedWith({ option: optionOf([part()]), bearingRad: 0 }, [[0, 1, 2.8]]);
const answer: ShownStroke = {
  priced,
  strokes: priced.strokes,
  aim: priced.finishes,
  spot: priced.finishes,
  nudges: [],
  flagged: [],
};
const room = (shortM: number | null, longM: number | null): Room[] => [
  { more: 0.25, leftM: 10, rightM: 10, shortM, longM },
];
const asked = (arms: Room[]) =>
  reasonsOf(solution, marks, { answer, plain: undefined, heldBack: undefined, room: arms });

test('the dear side is told when it gives out at a danger in less than half the room of the other', () => {
  const [depth] = asked(room(14, 30));
  expect(depth).toMatchObject({ kind: 'depth', dear: 'short', dearM: 14, easyM: 30 });
  expect(depth?.kind === 'depth' && depth.landmark.words).toBe('the creek');
});

test('not when both sides are alike, nor when no danger lies there', () => {
  expect(asked(room(14, 20))).toEqual([]);
  expect(asked(room(30, 8))).toEqual([]);
});

test('balls that finish on unmapped ground are always told', () => {
  const chances = { ...priced.chances, unmapped: 0.004 };
  const stray = { ...answer, priced: { ...priced, chances } };
  const reasons = reasonsOf(solution, marks, { answer: stray, plain: undefined, heldBack: undefined, room: [] });
  expect(reasons).toEqual([{ kind: 'unmapped', chance: 0.004 }]);
});
