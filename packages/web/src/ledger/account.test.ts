import { expect, test } from 'vitest';
import { accountOf, shotsOf, worstHoles } from './account.ts';
import type { KeptLedger } from './kept.ts';
import { comesTo, playedWords, tenths } from './words.ts';

const place = { eastM: 0, northM: 0 };
const NONE = { spot: 0, number: 0, swing: 0, risk: 0 };
const shot = (hole: string, n: number, number: number, loss: number): KeptLedger['shots'][number] => ({
  round: 1,
  hole,
  shot: n,
  part: 'long shot',
  lie: 'tee',
  from: place,
  to: place,
  loss,
  choice: { ...NONE, number },
  execution: { strike: loss - number, direction: 0, length: 0, luck: 0 },
  aimNoted: true,
});
const holes = Array.from({ length: 9 }, (_, i) => `${i + 1}`);
const ledger = (number: number): KeptLedger =>
  ({
    holes: holes.map((hole, i) => ({ round: 1, hole, par: 4, score: 5, expected: 4.5, choice: number + i / 100 })),
    shots: holes.flatMap((hole, i) => [
      shot(hole, 1, number + i / 100, 0.5),
      { ...shot(hole, 2, 0, -0.3), part: 'putt', choice: undefined, execution: undefined },
    ]),
    habits: [
      {
        habit: 'number',
        against: 'own best choice',
        strokesPerRound: { mean: 2 * (9 * number + 0.36), lo80: 1, hi80: 3 },
        shown: true,
        examples: [{ round: 1, hole: '9', shot: 1, strokes: number + 0.08 }],
      },
    ],
    unmeasured: [],
  }) as unknown as KeptLedger;

test('rows add up to their totals, choice apart from the day, and to what was lost', () => {
  const account = accountOf(ledger(0.2), [ledger(0.1)]);
  const sum = (rows: readonly { mean: number }[]) => rows.reduce((s, { mean }) => s + mean, 0);
  expect(sum(account.choice)).toBeCloseTo(account.choiceTotal.mean, 9);
  expect(account.choiceTotal.mean).toBeCloseTo(9 * 0.2 + 0.36, 9);
  expect(sum(account.usual)).toBeCloseTo(account.usualTotal.mean, 9);
  expect(account.choiceTotal.mean + account.usualTotal.mean).toBeCloseTo(9 * 0.2, 9);
  expect(account.choice[1]).toMatchObject({ name: 'number', shown: true, before: expect.closeTo(1.26, 9) });
  expect(account.choice[0]!.shown).toBe(false);
});

test('the shots behind a row, dearest first; the three worst holes', () => {
  expect(shotsOf(ledger(0.2), 'number').map(({ hole }) => hole)).toEqual(holes.toReversed());
  expect(shotsOf(ledger(0), 'spot')).toEqual([]);
  expect([...worstHoles(ledger(0.2))]).toEqual(['9', '8', '7']);
  expect(worstHoles(ledger(0)).size).toBe(0);
});

test('words', () => {
  expect([tenths(-0.04), tenths(-0.26), tenths(1.25)]).toEqual(['0.0', '−0.3', '1.3']);
  expect(playedWords(45, 36, 9)).toBe('played 45, par 36, 9 holes');
  expect(comesTo(ledger(0.2), 2.16, -0.36)).toEqual([
    ['The number cost most.', '2.2 of the 2.2: hole 9, stroke 1: 0.28.'],
    ['The day gave back 0.4.', 'Against these patterns that averages nought: nothing to mend from one round.'],
  ]);
});
