import { describe, expect, it } from 'vitest';
import { changeBetween, daysOf, drawnFromAbove, seenBalls } from './seen.ts';
import { changeWords } from './words.ts';

const ball = (date: string, carryM: number, sideM?: number, mishit?: true) => ({
  id: '',
  session: '',
  date,
  club: '7i',
  swing: 'full',
  carryM,
  ...(sideM === undefined ? {} : { sideM }),
  ...(mishit === undefined ? {} : { mishit }),
});
const BALLS = [
  ...[128, 132, 130, 129, 131].map((m) => ball('2026-05-03', m, -4)),
  ball('2026-05-03', 70, 3, true),
  ...[138, 142, 140, 139, 141].map((m, i) => ball('2026-06-09', m, i - 2)),
  { ...ball('2026-06-09', 90), club: 'PW' },
];
const seen = seenBalls(BALLS, undefined, { club: '7-iron', swing: 'Full' });
const days = { before: '2026-05-03', after: '2026-06-09' };

describe('balls of a club and swing', () => {
  it('are those of it, however it is spelled, with their days', () => {
    expect(seen).toHaveLength(11);
    expect(seen.filter((b) => b.mishit)).toHaveLength(1);
    expect(daysOf(seen)).toEqual(['2026-05-03', '2026-06-09']);
  });

  it('are drawn where they pitched: carry is straight from the ball, and without a side nowhere', () => {
    const { balls } = drawnFromAbove(
      '',
      'm',
      [
        { carryM: 50, sideM: -30, mishit: false },
        { carryM: 9, mishit: true },
      ],
      undefined,
      undefined,
    );
    expect(balls).toEqual([{ alongM: 40, acrossM: -30, mishit: false }]);
    const two = drawnFromAbove('', 'm', seen, undefined, days);
    expect([two.balls.length, two.before?.length]).toEqual([5, 6]);
  });

  it('are compared between two days by their good strikes, in plain words', () => {
    const change = changeBetween(seen, days);
    expect(change.carryM?.mean).toBeCloseTo(10, 9);
    expect(change.before).toEqual({ date: '2026-05-03', balls: 6, mishits: 1, goodCarryM: 130 });
    expect(changeWords(change, 'm')).toEqual([
      '3 May 2026: 6 balls, 1 mishit, good strikes 130 m.',
      '9 June 2026: 5 balls, 0 mishit, good strikes 140 m.',
      'Carry: 10 m longer, four times in five from 9 to 11. More than chance.',
      'Line: 4 m further right, four times in five from 3 to 5. More than chance.',
    ]);
    expect(changeWords(changeBetween(seen.slice(0, 8), days), 'm')[2]).toBe(
      'Too few good strikes on one of the days to tell a change from chance: four on each are the least.',
    );
  });
});
