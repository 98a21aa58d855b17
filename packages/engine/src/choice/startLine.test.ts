import { expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { landmarksOf } from './landmark.ts';
import { startLine } from './startLine.ts';
import { box, groundWith } from './testdata/madeUp.ts';
import { wordStartLine } from './wordReason.ts';

const ball = { eastM: 0, northM: 0 };
const words = (areas: Parameters<typeof groundWith>[0], aimEastM: number): string => {
  const ground = groundWith(areas);
  const line = startLine(ground, landmarksOf(ground), ball, Math.atan2(aimEastM, 100), 100);
  return line === undefined ? '' : wordStartLine(line, 'yd');
};
const green = box('green', 'green', [-10, 90, 10, 110]);

test('straight at the flag is a start line of its own', () => {
  expect(words([green], 0.5)).toBe('the flag');
});

test('an edge within a yard of the line is named by its side', () => {
  const back = box('b', 'bunker', [3, 112, 12, 120]);
  expect(words([back], 2.6)).toBe('the left edge of the bunker');
  expect(words([back], 10.7)).toBe('the right edge of the bunker');
});

test('else the nearest edge is named with how far from it the line passes', () => {
  const right = [box('r1', 'bunker', [20, 95, 28, 99]), box('r2', 'bunker', [21, 101, 29, 106])];
  const left = box('l', 'bunker', [-50, 95, -45, 105]);
  const near = 6;
  const offset = words([...right, left], near);
  expect(offset).toMatch(/^\d+ yd left of the right bunkers$/);
  const edgeM = (20 / 99) * 100 - near;
  expect(Math.abs(Number.parseInt(offset, 10) - edgeM / YARD_M)).toBeLessThan(1.6);
});

test('nothing behind the player or far beyond the aim serves', () => {
  expect(words([box('b', 'bunker', [5, -30, 12, -20]), box('f', 'bunker', [5, 300, 12, 310])], 4)).toBe('');
});
