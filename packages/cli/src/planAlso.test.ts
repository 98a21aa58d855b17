import { referenceHole, referencePlayer } from '@leeway/engine/testdata';
import { expect, test } from 'vitest';
import { Usage } from './command.ts';
import { namedStrokes } from './planAlso.ts';

const ground = referenceHole('h1_par3_125');
const player = referencePlayer('player');
const tee = { at: ground.ball, lie: 'tee' } as const;
const named = (...texts: string[]) => namedStrokes(texts, player, ground, tee);

test('a club alone is its full swing, in any spelling', () => {
  expect(named('8-iron@0,0.0012').value?.[0]?.option.swing).toBe('8I-full');
  expect(named('8i@0,0.0012', 'PW, PW-half@0,0.0012').value?.map((s) => s.option.swing)).toEqual([
    '8I-full',
    'PW-half',
  ]);
});

test('a place is where it is said, by longitude and latitude or by paces on the green', () => {
  const [there] = named('8I@0.0001,0.0012').value ?? [];
  expect(there?.place.eastM).toBeCloseTo(10, 6);
  expect(there?.place.northM).toBeCloseTo(120, 6);
  const [middle] = named('8I@17,11R').value ?? [];
  expect(Math.abs(middle?.place.eastM ?? 9)).toBeLessThan(2.5);
});

test.each([
  ['9-wood@0,0.0012', 'unknown-club'],
  ['8I, sawn-off@0,0.0012', 'unknown-swing'],
  ['8I@60,7R', 'off-the-green'],
])('%s is one clear fault', (text, code) => {
  const { value, faults } = named(text);
  expect(value).toBeUndefined();
  expect(faults.map((f) => f.code)).toEqual([code]);
});

test('without a place it is wrong usage', () => {
  expect(() => named('8I')).toThrow(Usage);
});
