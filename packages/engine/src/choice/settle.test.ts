import { expect, test } from 'vitest';
import { worseShare } from './doubt.ts';
import { settling } from './settle.ts';
import type { ShownStroke } from './shown.ts';
import { optionOf, part, pricedWith, SURE } from './testdata/madeUp.ts';

const doubt = { ...SURE, balls: 8, seAlongM: 4 };
const long = optionOf([part()], { club: '5-iron', doubt });
const short = optionOf([part()], { club: '7-iron', doubt: { ...SURE, balls: 60 } });
const shown = (option: typeof long, strokes: number, se: number): ShownStroke => ({
  priced: pricedWith({ option, bearingRad: 0 }, [[0, 1, strokes]]),
  strokes,
  aim: { eastM: 0, northM: 0 },
  spot: { eastM: 0, northM: 0 },
  nudges: [{ key: `${option.club}\n${option.swing}\nalong`, strokes: se }],
  flagged: [],
});

test('balls of the option that is not known would settle it, and no fewer', () => {
  const [worse, better] = [shown(long, 3.05, 0.1), shown(short, 3, 0.01)];
  const found = settling(worse, better);
  expect(found?.option.club).toBe('5-iron');
  const after = (balls: number): number => {
    const se = 0.1 * Math.sqrt(8 / (8 + balls));
    return worseShare(shown(long, 3.05, se), better);
  };
  // Phi^-1(.8) = .8416: a standard error of .0594 has to be reached, from .1 at 8 balls
  expect(Math.abs((found?.balls ?? 0) - (8 * (0.1 / 0.0594) ** 2 - 8))).toBeLessThan(4);
  expect(after(found?.balls ?? 0)).toBeGreaterThanOrEqual(0.8);
  expect(after((found?.balls ?? 0) - 1)).toBeLessThan(0.8);
});

test('nothing is to be settled where one is plainly better, or nothing is between them', () => {
  expect(settling(shown(long, 3.3, 0.1), shown(short, 3, 0.01))).toBeUndefined();
  expect(settling(shown(long, 3.01, 0.1), shown(short, 3, 0.01))).toBeUndefined();
});
