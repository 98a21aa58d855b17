import { expect, test } from 'vitest';
import { fromOf, pinOf, speedOf } from './typed.ts';

const zone = (depth: string, side: string) => ({ kind: 'zone', zone: { depth, side } });

test.each([
  ['', 'map'],
  ['f', zone('front', 'middle')],
  ['m', zone('middle', 'middle')],
  ['BL', zone('back', 'left')],
  ['mr', zone('middle', 'right')],
  ['l', zone('middle', 'left')],
  ['back left', zone('back', 'left')],
  ['Front-right', zone('front', 'right')],
  ['left', zone('middle', 'left')],
  ['16,7R', { kind: 'paces', on: 16, in: 7, side: 'R' }],
  ['12.5, 4 l', { kind: 'paces', on: 12.5, in: 4, side: 'L' }],
  ['lb', undefined],
  ['x', undefined],
  ['far left', undefined],
  ['16,7', undefined],
  ['fmr', undefined],
])('the flag %j', (text, pin) => {
  expect(pinOf(text)).toEqual(pin);
});

test('a wind is typed in miles an hour or metres a second, from degrees or a point of the compass', () => {
  expect(speedOf('10', 'yd')).toBeCloseTo(4.4704, 9);
  expect([speedOf('4,5', 'm'), speedOf('', 'm'), speedOf('calm', 'yd')]).toEqual([4.5, 0, 0]);
  expect([speedOf('strong', 'yd'), speedOf('-3', 'yd'), speedOf('900', 'm')]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
  expect([fromOf('240'), fromOf('SW'), fromOf('nne'), fromOf('360°'), fromOf('')]).toEqual([240, 225, 22.5, 0, 0]);
  expect([fromOf('400'), fromOf('left')]).toEqual([undefined, undefined]);
});
