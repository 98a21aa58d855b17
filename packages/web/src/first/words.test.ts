import type { KeptPlan } from '@leeway/contract';
import { expect, test } from 'vitest';
import { keptWords as kept, ownPlaceWords } from './words.ts';

/** Without the marks that hold a club's name on one line. */
const keptWords = (...of: Parameters<typeof kept>): string => kept(...of).replaceAll('\u2060', '');

const plan: KeptPlan = {
  id: '3f0d7c8e-2b41-4d6a-8f2e-000000000001',
  madeAt: '2026-11-28T18:04:00Z',
  date: '2026-11-28',
  day: { windMps: 0, temperatureC: 20, pressureHpa: 1013.25, humidityPercent: 50 },
  holes: [{ hole: '7', par: 4, expectedStrokes: 4.28 }],
};
const own = {
  hole: '7',
  shot: 1,
  option: { club: '5I', swing: 'full' },
  spot: { lon: -27, lat: 48 },
  expectedStrokes: 3.61,
  costsMore: 0.061,
  reason: 'She sees the whole green.',
};

test('a kept choice tells its day, cost and reason; a tie is called one; another hole’s choice is not told', () => {
  expect(keptWords({ ...plan, own }, '7', 'yd')).toBe(
    'Kept on 28 November 2026, calm: 5-iron, full, 0.06 more than the plan. “She sees the whole green.”',
  );
  expect(keptWords({ ...plan, own: { ...own, costsMore: 0.01 } }, '7', 'yd')).toContain('a tie with the plan');
  expect(keptWords(plan, '7', 'yd')).toBe('Kept on 28 November 2026, calm: the plan, 4.28 strokes expected.');
  const windy = { ...plan, day: { ...plan.day, windMps: 4.4704 }, lines: [{ hole: '7', line: 'D 238 · 8i middle' }] };
  expect(keptWords(windy, '7', 'yd')).toBe(
    'Kept on 28 November 2026, wind 10 mph: D 238 · 8i middle, in a round plan.',
  );
});

test('a chosen spot is told from the flag when it is near, else by how far out it is', () => {
  const [ball, flag] = [
    { eastM: 0, northM: 0 },
    { eastM: 0, northM: 182.88 },
  ];
  expect(ownPlaceWords({ ball, flag, at: { eastM: -5.4864, northM: 176.4792 } }, 'yd')).toBe(
    'Your spot: 6 yd left of the flag and 7 yd short of it.',
  );
  expect(ownPlaceWords({ ball, flag, at: { eastM: 9.144, northM: 91.44 } }, 'yd')).toBe(
    'Your spot: 100 yd out, 10 yd right of the flag line.',
  );
});
