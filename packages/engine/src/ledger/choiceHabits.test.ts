import { expect, test } from 'vitest';
import { choiceHabits, type ChosenShot } from './choiceHabits.ts';

const shot = (hole: number, choice: Partial<ChosenShot['choice']>): ChosenShot => ({
  round: 1,
  hole: `${hole}`,
  shot: 1,
  choice: { spot: 0, number: 0, swing: 0, risk: 0, ...choice },
});

test('the dearest habit comes first, by the round of eighteen, with the strokes that show it', () => {
  const holes = Array.from({ length: 36 }, (_, i) => [shot(i + 1, i % 2 === 0 ? { spot: 0.1, number: 0.03 } : {})]);
  const [first, second, ...rest] = choiceHabits(holes);
  expect(first!.habit).toBe('spot');
  expect(first!.strokesPerRound.mean).toBeCloseTo(0.9, 9);
  expect(first!.strokesPerRound.lo80).toBeGreaterThan(0.6);
  expect(first!.strokesPerRound.hi80).toBeLessThan(1.2);
  expect(first!.shown).toBe(true);
  expect(first!.examples).toHaveLength(3);
  expect(second!.habit).toBe('number');
  expect(second!.strokesPerRound.mean).toBeCloseTo(0.27, 9);
  for (const { strokesPerRound, shown, examples } of rest) {
    expect({ mean: strokesPerRound.mean, shown, examples }).toEqual({ mean: 0, shown: false, examples: [] });
  }
});

test('a choice within a tie of the best is no habit, and a single stroke shows none yet', () => {
  const ties = Array.from({ length: 18 }, (_, i) => [shot(i + 1, { spot: 0.019 })]);
  expect(choiceHabits(ties)[0]!.strokesPerRound.mean).toBe(0);
  const once = ties.map((_, i) => [shot(i + 1, i === 4 ? { risk: 0.4 } : {})]);
  const [risk] = choiceHabits(once);
  expect([risk!.habit, risk!.shown]).toEqual(['risk', false]);
  expect(choiceHabits([])).toEqual([]);
});
