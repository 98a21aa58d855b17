import { readFileSync } from 'node:fs';
import { readGround } from '@leeway/formats';
import { expect, test } from 'vitest';
import { committedFiles } from './committed.ts';
import { DEMO, demoPath } from './demoPath.ts';

test.each(Object.entries(committedFiles()))('%s is what the generator gives', (path, text) => {
  expect(readFileSync(demoPath(path), 'utf8')).toBe(text);
});

test('the 7th is The Saltings, with all its surfaces and a flag by its pin', () => {
  const { value } = readGround(readFileSync(DEMO.ground, 'utf8'), 'tolvane.geojson');
  expect(value?.course).toBe('Tolvane Links');
  const hole = value?.holes.find((h) => h.hole === '7');
  expect([hole?.name, hole?.par, hole?.flagFrom]).toEqual(['The Saltings', 4, 'pin']);
  const surfaces = new Set(hole?.areas.map((a) => a.surface));
  expect([...surfaces].toSorted((a, b) => a.localeCompare(b))).toEqual([
    'bunker',
    'fairway',
    'green',
    'out',
    'penalty',
    'recovery',
    'rough',
    'tee',
  ]);
});
