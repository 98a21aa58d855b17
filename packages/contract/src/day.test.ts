import { type Day, REFERENCE, stationHpa } from '@leeway/engine';
import { expect, test } from 'vitest';
import { dayDocument, dayOf, daySchema } from './day.ts';

const DAYS: readonly Day[] = [
  REFERENCE,
  {
    temperatureC: 9.5,
    stationHpa: 962.5,
    humidityPercent: 81,
    altitudeM: 420,
    wind: { speedMps: 6.25, fromDeg: 245, heightM: 2, roughnessM: 0.1, gustMps: 11 },
    ground: { firmness: 'firm', greenSpeedM: 3.2, wet: true, frozen: true, plugging: true, preferredLies: true },
  },
];

test.each(DAYS)('a day is the same after being written down', (day) => {
  const document = daySchema.parse(JSON.parse(JSON.stringify(dayDocument(day))));
  expect(dayOf(document)).toEqual(day);
});

test('an impossible day is no document', () => {
  const good = dayDocument({ ...REFERENCE, stationHpa: stationHpa(1013.25, 300) });
  expect(daySchema.safeParse(good).success).toBe(true);
  for (const bad of [{ windMps: 83 }, { humidityPercent: 101 }, { temperatureC: Number.NaN }, { pressureHpa: 30 }]) {
    expect(daySchema.safeParse({ ...good, ...bad }).success).toBe(false);
  }
});
