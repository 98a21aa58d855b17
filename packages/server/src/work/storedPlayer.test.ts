import { expect, test } from 'vitest';
import { fitShots } from './fitShots.ts';
import { ballOf } from './storedPlayer.ts';

const shot = (carryM: number) => ({ session: '', club: '7-iron', swing: 'full', carryM });
const session = (day: object) => ({ date: '2026-05-14', purpose: 'range' as const, bearingDeg: 0, day });

test('what a session tells of the day stands for its shots, unless a row tells otherwise', () => {
  const told = session({ temperatureC: 5, windMps: 4, windFromDeg: 0 });
  expect(ballOf(shot(130), told).readings).toEqual({
    date: '2026-05-14',
    temperature: 5,
    'wind speed': 4,
    'wind from': 0,
    bearing: 0,
  });
  expect(ballOf({ ...shot(130), readings: { temperature: 12 } }, told).readings['temperature']).toBe(12);
  expect(ballOf(shot(130)).readings).toEqual({});
});

test('balls hit into a wind are fitted as longer than they flew that day, and down it as shorter', () => {
  const carryIn = (day: object): number => {
    const balls = [128, 130, 131, 132, 133, 129].map((carryM) => ballOf(shot(carryM), session(day)));
    const { value } = fitShots({ version: 1, name: 'Kim Aster', handicapIndex: 14 }, balls);
    return value?.ladder.entries[0]?.carryM.mean ?? NaN;
  };
  const calm = carryIn({});
  expect(carryIn({ windMps: 5, windFromDeg: 0 })).toBeGreaterThan(calm + 2);
  expect(carryIn({ windMps: 5, windFromDeg: 180 })).toBeLessThan(calm - 2);
});

test('a wind told from the line of aim needs no bearing: only its angle to the line moves a ball', () => {
  const told = { date: '2026-05-14', purpose: 'gapping' as const, lineWind: { speedMps: 4, fromDeg: 270 } };
  expect(ballOf(shot(130), told).readings).toEqual({
    date: '2026-05-14',
    'wind speed': 4,
    'wind from': 270,
    bearing: 0,
  });
  expect(ballOf(shot(130), { ...told, bearingDeg: 200 }).readings).toEqual({
    date: '2026-05-14',
    'wind speed': 4,
    'wind from': 110,
    bearing: 200,
  });
});
