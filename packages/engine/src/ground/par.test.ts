import { expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { parByLength } from './par.ts';

test.each([
  [150, 3],
  [250, 3],
  [251, 4],
  [380, 4],
  [470, 4],
  [471, 5],
  [600, 5],
  [700, 6],
])('%i yd is a par %i', (lengthYd, par) => {
  expect(parByLength(lengthYd * YARD_M)).toBe(par);
});
