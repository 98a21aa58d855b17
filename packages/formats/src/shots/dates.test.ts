import type { ShotRow } from '@leeway/contract';
import { expect, test } from 'vitest';
import { agesOf } from './dates.ts';
import { groupShots } from './groupShots.ts';
import { readShots } from './readShots.ts';

const rows = (dates: readonly (string | undefined)[], file = 'a.csv'): ShotRow[] =>
  dates.map((date, i) => ({
    file,
    line: i + 2,
    club: '7i',
    swing: 'full',
    carryM: 140,
    ...(date === undefined ? {} : { date }),
    readings: {},
  }));
const ages = (...dates: (string | undefined)[]): readonly (number | undefined)[] => agesOf(rows(dates)).agesDays;

test('dates of sessions are counted back from the newest, across the end of a year and a leap day', () => {
  expect(ages('2026-01-02', '2025-12-31T18:20:00', undefined, 'yesterday')).toEqual([0, 2, undefined, undefined]);
  expect(ages('1.3.2024', '28.2.2024')).toEqual([0, 2]);
  expect(ages('2026-02-30')).toEqual([undefined]);
});

test('a file’s own dates settle whether the day or the month comes first, and else it is told', () => {
  expect(ages('3/4/2026', '25/4/2026')).toEqual([22, 0]);
  expect(ages('4/3/2026', '4/25/2026')).toEqual([22, 0]);
  const both = agesOf(rows(['3/4/2026', '5/4/2026']));
  expect(both.agesDays).toEqual([undefined, undefined]);
  expect(both.faults.map((f) => f.code)).toEqual(['dates']);
  expect(agesOf(rows(['4/4/2026', '5/5/2026'])).agesDays).toEqual([31, 0]);
});

test('balls of the range and their days are known to the fit', () => {
  const text = 'club,carry [m],side [m],ball,date\n7i,140,1,range,2026-05-01\n7i,141,0,own,2026-05-11\n';
  const { value = [] } = readShots(text, 'b.csv', { units: 'yd' });
  expect(groupShots(value, []).swings[0]?.balls).toMatchObject([{ ageDays: 10, rangeBall: true }, { ageDays: 0 }]);
});
