import { expect, test } from 'vitest';
import { Usage } from './command.ts';
import { parsePlace } from './planPlace.ts';

test('a place is degrees, longitude first, or paces on and in from a side', () => {
  expect(parsePlace('flag', '-3.1,54.2')).toEqual({ kind: 'place', at: { lon: -3.1, lat: 54.2 } });
  expect(parsePlace('flag', '16,7R')).toEqual({ kind: 'paces', on: 16, in: 7, side: 'R' });
  expect(parsePlace('flag', ' 4.5 , 3l ')).toEqual({ kind: 'paces', on: 4.5, in: 3, side: 'L' });
});

test.each(['16', '16,R', '16,7,2R', 'front', '54.2,-93.1 N', '-4,7R'])('%s is neither', (text) => {
  expect(() => parsePlace('flag', text)).toThrow(Usage);
});
