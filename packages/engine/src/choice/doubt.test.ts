import { expect, test } from 'vitest';
import { doubtOf, isTie, nudgesOf, posteriorMean, standardError, worseShare } from './doubt.ts';
import { groundWith, optionOf, part, solutionOf, SURE } from './testdata/madeUp.ts';

const from = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;
/** Strokes rise by 0.01 a metre along and 0.03 a metre across, by 0.2 for a doubled spread along, and by a stroke for a sure mishit. */
const solution = solutionOf(groundWith([]), {
  strokesOf: (_, { option }) => {
    const pattern = option.byLie.tee;
    const good = pattern?.parts[0];
    if (pattern === undefined || good === undefined) throw new Error('no pattern');
    const spread = Math.log(good.sdAlongM / 8) / Math.LN2;
    return 3 + 0.01 * good.alongM + 0.03 * good.acrossM + 0.2 * spread + (1 - good.weight);
  },
});
const doubt = { balls: 24, seAlongM: 2, seAcrossM: 1, seLogSdAlong: 0.1, seLogSdAcross: 0.1, seMishitShare: 0.02 };
const option = optionOf([part({ weight: 0.9 }), part({ weight: 0.1, alongM: 60 })], { doubt });

test('each parameter moves expected strokes by its slope times its standard error', () => {
  const nudges = nudgesOf(solution, from, { option, bearingRad: 0 });
  const byName = Object.fromEntries(nudges.map((n) => [n.key.split('\n')[2], n.strokes]));
  expect(byName['along']).toBeCloseTo(0.02, 9);
  expect(byName['across']).toBeCloseTo(0.03, 9);
  expect(byName['sd along']).toBeCloseTo((0.2 * 0.1) / Math.LN2, 9);
  expect(byName['mishits']).toBeCloseTo(0.02, 9);
  expect(byName).not.toHaveProperty('sd across');
});

test('the interval that holds four times in five reaches 1.2816 standard errors either way', () => {
  const found = doubtOf(
    3,
    [
      { key: 'a', strokes: 0.03 },
      { key: 'b', strokes: 0.04 },
    ],
    option,
  );
  expect(found.se).toBeCloseTo(0.05, 12);
  expect(found.balls).toBe(24);
  expect(found.hi80 - 3).toBeCloseTo(0.05 * 1.2815515655446004, 12);
});

test('a stated pattern has no doubt', () => {
  const stated = optionOf([part()], { doubt: SURE });
  expect(doubtOf(3, nudgesOf(solution, from, { option: stated, bearingRad: 0 }), stated)).toEqual({
    se: 0,
    balls: 0,
    lo80: 3,
    hi80: 3,
  });
});

test('what two shots share adds up; what they do not adds in squares', () => {
  const a = { key: 'a', strokes: 0.03 };
  expect(standardError([a, a])).toBeCloseTo(0.06, 12);
  expect(standardError([a, { key: 'b', strokes: 0.03 }])).toBeCloseTo(0.03 * Math.SQRT2, 12);
});

test('a tie is under 0.02, or worse in fewer than 8 of 10 common draws', () => {
  const sure = (strokes: number) => ({ strokes, nudges: [] });
  expect(isTie(sure(3.019), sure(3))).toBe(true);
  expect(isTie(sure(3.021), sure(3))).toBe(false);
  const vague = (strokes: number, key: string) => ({ strokes, nudges: [{ key, strokes: 0.05 }] });
  // sd .0707: Phi(.05 / .0707) = .76, Phi(.07 / .0707) = .84
  expect(isTie(vague(3.05, 'a'), vague(3, 'b'))).toBe(true);
  expect(isTie(vague(3.07, 'a'), vague(3, 'b'))).toBe(false);
  expect(isTie(vague(3.05, 'a'), vague(3, 'a'))).toBe(false);
});

test('common draws have the share of a normal, and what both share falls out', () => {
  const a = { strokes: 3.05, nudges: [{ key: 'a', strokes: 0.06 }] };
  const b = { strokes: 3, nudges: [{ key: 'b', strokes: 0.08 }] };
  expect(Math.abs(worseShare(a, b) - 0.6915)).toBeLessThan(0.03);
  expect(worseShare({ ...a, nudges: b.nudges }, b)).toBe(1);
});

test('over the posterior strokes are dearer by the bend of each parameter', () => {
  const curved = solutionOf(groundWith([]), {
    strokesOf: (_, stroke) => 3 + 0.005 * ((stroke.option.byLie.tee?.parts[0]?.alongM ?? 0) - 100) ** 2,
  });
  const nudges = nudgesOf(curved, from, { option, bearingRad: 0 });
  // E[.005 x^2] = .005 x 2^2
  expect(posteriorMean(3, nudges)).toBeCloseTo(3.02, 9);
});
