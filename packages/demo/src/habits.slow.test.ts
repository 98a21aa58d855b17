import {
  accountHole,
  bearingRad,
  choiceHabits,
  type ChosenShot,
  distanceM,
  playerModel,
  randomFrom,
  solveHole,
  StrokesLeft,
  virtualHole,
  type BallState,
  type Stroke,
} from '@leeway/engine';
import { readPlayer } from '@leeway/contract';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DEMO } from './demoPath.ts';

const course = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground).value!;
const player = playerModel(readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player).value!);
/** Holes with water, sand and neither. */
const HOLES = ['3', '7', '9', '12'];
const ROUNDS = 5;

const best = (left: StrokesLeft, from: BallState): Stroke => left.bests(from)!.best;

const lefts = HOLES.map((hole) => {
  const ground = course.holes.find((h) => h.hole === hole)!;
  return { hole, left: new StrokesLeft(solveHole(ground, player), player) };
});

/** By habit, what is played from a state. */
const WAYS: { readonly [habit: string]: (left: StrokesLeft, from: BallState) => Stroke } = {
  'one who chooses best': best,
  'one who goes straight at the flag': (left, from) => {
    const { option } = best(left, from);
    return { option, bearingRad: bearingRad(from.at, left.solution.ground.flag) };
  },
  'one who takes a club too little': (left, from) => {
    const chosen = left.bests(from)!.best;
    const reach = (s: Stroke): number => distanceM(from.at, left.solution.placesOf(from, s)?.finishes ?? from.at);
    const shorter = player.options
      .flatMap((option) => left.bests(from)!.of(option) ?? [])
      .filter((s) => s.option.swing === chosen.option.swing && reach(s) < reach(chosen) - 4)
      .toSorted((a, b) => reach(b) - reach(a))[0];
    return from.lie === 'tee' || shorter === undefined ? chosen : shorter;
  },
};

describe.each(Object.entries(WAYS))('the account of %s', (name, way) => {
  const random = randomFrom(name.length);
  const played = Array.from({ length: ROUNDS }, (_, round) =>
    lefts.map(({ hole, left }) => {
      const shots = virtualHole(left, (from) => way(left, from), random);
      const account = accountHole(left, shots)!;
      const chosen = account.shots.flatMap(({ shot, choice }): ChosenShot[] =>
        choice === undefined ? [] : [{ round, hole, shot, choice }],
      );
      return { account, chosen };
    }),
  ).flat();
  const habits = choiceHabits(played.map(({ chosen }) => chosen));
  const [first] = habits;
  const total = habits.reduce((sum, h) => sum + h.strokesPerRound.mean, 0);

  test('adds up to the score', () => {
    for (const { account } of played) {
      expect(account.shots.reduce((sum, s) => sum + s.loss, 0)).toBeCloseTo(account.score - account.expected, 9);
    }
  });

  test('names what they do, and charges the best chooser next to nothing', () => {
    if (name === 'one who chooses best') expect(total).toBeLessThan(0.15);
    else if (name === 'one who takes a club too little') expect([first!.habit, first!.shown]).toEqual(['number', true]);
    else expect(['spot', 'risk']).toContain(first!.habit);
  });
});
