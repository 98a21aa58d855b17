import { readFileSync } from 'node:fs';
import { readPlayer } from '@leeway/contract';
import { readGround } from '@leeway/formats';
import { expect, test } from 'vitest';
import { committedFiles } from './committed.ts';
import { DEMO, demoPath } from './demoPath.ts';

test.each(Object.entries(committedFiles()))('%s is what the generator gives', (path, text) => {
  expect(readFileSync(demoPath(path), 'utf8')).toBe(text);
});

test('the course reads without a fault: one hole, all its surfaces, a flag by its pin', () => {
  const { value, faults } = readGround(readFileSync(DEMO.ground, 'utf8'), 'tolvane.geojson');
  expect(faults).toEqual([]);
  expect(value?.course).toBe('Tolvane Links');
  expect(value?.holes.map((h) => [h.hole, h.name, h.par, h.flagFrom])).toEqual([['7', 'The Saltings', 4, 'pin']]);
  const surfaces = new Set(value?.holes[0]?.areas.map((a) => a.surface));
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

test('outlines look surveyed: the green has many corners and no two sides alike', () => {
  const { value } = readGround(readFileSync(DEMO.ground, 'utf8'), 'tolvane.geojson');
  const green = value?.holes[0]?.areas.find((a) => a.surface === 'green')?.polygon.outer ?? [];
  const sidesM = green.map((p, i) => {
    const next = green[(i + 1) % green.length] ?? p;
    return Math.hypot(next.eastM - p.eastM, next.northM - p.northM).toFixed(2);
  });
  expect(green.length).toBeGreaterThanOrEqual(20);
  expect(new Set(sidesM).size).toBeGreaterThan(green.length / 2);
});

test('the player reads without a fault', () => {
  const { value, faults } = readPlayer(readFileSync(DEMO.player, 'utf8'), 'odile-varga.json');
  expect(faults).toEqual([]);
  expect(value?.name).toBe('Odile Varga');
});
