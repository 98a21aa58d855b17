import { expect, test } from 'vitest';
import { parseFlag } from './givenFlag.ts';

test.each([
  ['16,7R', { kind: 'paces', on: 16, in: 7, side: 'R' }],
  [' 12.5, 3l ', { kind: 'paces', on: 12.5, in: 3, side: 'L' }],
  ['-3.1,54.2', { kind: 'place', at: { lon: -3.1, lat: 54.2 } }],
])('%s', (text, value) => {
  expect(parseFlag(text)).toEqual({ value, faults: [] });
});

test.each(['', '16', '16,7X', '-4,7R', '54.2;3', '200,10', '3,95', 'NaN,2'])('%j is refused', (text) => {
  const { value, faults } = parseFlag(text);
  expect([value, faults[0]?.code]).toEqual([undefined, 'bad-flag']);
});
