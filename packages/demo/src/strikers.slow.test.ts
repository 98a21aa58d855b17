import { executionHabits, playerModel, randomFrom, solveHole, StrokesLeft } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { DEMO } from './demoPath.ts';
import { CHOOSERS } from './virtual/choosers.ts';
import { choiceOf, lossesOf, roundsOf } from './virtual/roundsOf.ts';
import { measured, striker, truthOf } from './virtual/strikers.ts';

const course = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground).value!;
const ground = course.holes.find((h) => h.hole === '9')!;
const solved = (file: ReturnType<typeof truthOf>): StrokesLeft => {
  const player = playerModel(file);
  return new StrokesLeft(solveHole(ground, player), player);
};

test.each([
  ['a fat-striker', 'points about', { mishits: 2.2, direction: 1, length: 1 }],
  ['a good chooser with a poor strike', 'chooses best', { mishits: 1.7, direction: 1, length: 1.2 }],
] as const)('%s, known by 30 balls of every swing, is told of the strike first', (_, way, flaw) => {
  const swings = striker(flaw);
  const random = randomFrom(5);
  const file = measured(swings, 30, random);
  const holes = roundsOf([{ believed: solved(file), truth: solved(truthOf(swings)) }], CHOOSERS[way], 8, random);
  const { habits, unmeasured } = executionHabits(file, holes);
  const [first] = [...habits, ...choiceOf(holes)].toSorted((a, b) => b.strokesPerRound.mean - a.strokesPerRound.mean);
  expect([first!.habit, first!.shown]).toEqual(['strike', true]);
  expect(first!.strokesPerRound.lo80).toBeLessThan(first!.strokesPerRound.mean);
  expect(unmeasured).toEqual(['shortGame', 'putting']);
  if (way === 'chooses best') expect(Math.abs(lossesOf(holes).choice)).toBeLessThan(0.15);
});
