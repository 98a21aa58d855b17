import { holeNumbersSchema } from '@leeway/contract';
import { YARD_M } from '@leeway/engine';
import { expect, test } from 'vitest';
import { emptyHazard, emptyHole, nextNumber, numbersOf, readFigure, typedOf } from './typed.ts';

const TYPED = {
  ...emptyHole('7', 'yd'),
  name: 'The Elbow',
  length: '380',
  turnAt: '230',
  turnBy: '−20',
  hazards: [
    { ...emptyHazard, reach: '207', carry: '224', off: '14' },
    { ...emptyHazard, kind: 'water', reach: '330', carry: '342', side: 'across', off: '99' },
    emptyHazard,
  ],
} as const;

test('a length alone is a hole', () => {
  const numbers = numbersOf({ ...emptyHole('1', 'yd'), length: '150' }, 'yd');
  expect(holeNumbersSchema.parse(numbers)).toEqual(numbers);
  expect(numbers).toMatchObject({ hole: '1', lengthM: 150 * YARD_M, green: { depthM: 30 * YARD_M }, hazards: [] });
});

test('figures are read in the units of the page; an empty line is left out, and what lies across is not off to a side', () => {
  const numbers = numbersOf(TYPED, 'yd');
  expect(holeNumbersSchema.parse(numbers)).toEqual(numbers);
  expect(numbers).toMatchObject({ turn: { atM: 230 * YARD_M, byDeg: -20 } });
  expect(numbers?.hazards).toEqual([
    { kind: 'sand', reachM: 207 * YARD_M, carryM: 224 * YARD_M, side: 'right', offM: 14 * YARD_M },
    { kind: 'water', reachM: 330 * YARD_M, carryM: 342 * YARD_M, side: 'across' },
  ]);
});

test('the form of kept numbers reads back as those numbers', () => {
  for (const units of ['yd', 'm'] as const) {
    const numbers = numbersOf({ ...TYPED, ...emptyHole('7', units), length: '380', hazards: TYPED.hazards }, units);
    if (numbers === undefined) throw new Error('no numbers');
    expect(numbersOf(typedOf(numbers, units), units)).toEqual(numbers);
  }
});

test.each([
  ['no length', { length: '' }],
  ['a length that is none', { length: '38o' }],
  ['a turn without its place', { turnAt: '' }],
  ['a hazard without its carry', { hazards: [{ ...emptyHazard, reach: '200' }] }],
])('%s is no hole yet', (_, change) => {
  expect(numbersOf({ ...TYPED, ...change }, 'yd')).toBeUndefined();
});

test.each([
  ['14,5', 14.5],
  ['−20', -20],
  ['', undefined],
  ['1e3', NaN],
  ['--2', NaN],
])('%j is read as %s', (text, figure) => {
  expect(readFigure(text)).toEqual(figure);
});

test('the next hole has the next number', () => {
  expect(nextNumber([])).toBe('1');
  const hole = holeNumbersSchema.parse(numbersOf(TYPED, 'yd'));
  expect(nextNumber([hole, { ...hole, hole: '3' }])).toBe('8');
});
