import { playerModel, randomFrom, solveHole, StrokesLeft } from '@leeway/engine';
import { readPlayer } from '@leeway/contract';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DEMO } from './demoPath.ts';
import { CHOOSERS } from './virtual/choosers.ts';
import { choiceOf, lossesOf, roundsOf } from './virtual/roundsOf.ts';

const course = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground).value!;
const player = playerModel(readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player).value!);
/** Holes with water, sand and neither. */
const HOLES = ['3', '7', '9', '12'];
const ROUNDS = 5;

const lefts = HOLES.map((hole) => {
  const ground = course.holes.find((h) => h.hole === hole)!;
  const left = new StrokesLeft(solveHole(ground, player), player);
  return { believed: left, truth: left };
});

/** Ways of choosing, and the habits that the account may name them by. */
const WAYS = [
  ['chooses best', []],
  ['aims at the flag', ['spot', 'risk']],
  ['takes a club too little', ['number']],
] as const;

describe.each(WAYS)('the account of one who %s', (way, named) => {
  const played = roundsOf(lefts, CHOOSERS[way], ROUNDS, randomFrom(way.length));
  const habits = choiceOf(played);
  const [first] = habits;

  test('adds up to the score', () => {
    for (const { account } of played) {
      expect(account.shots.reduce((sum, s) => sum + s.loss, 0)).toBeCloseTo(account.score - account.expected, 9);
    }
  });

  test('names what they do, and charges the best chooser next to nothing', () => {
    if (way === 'chooses best') expect(Math.abs(lossesOf(played).choice)).toBeLessThan(0.15);
    else expect([named.some((habit) => habit === first!.habit), first!.shown]).toEqual([true, true]);
  });
});
