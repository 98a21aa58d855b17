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

test('the good strike is sent at the place, its sideways bias allowed for', () => {
  const [stroke] = named('8I@0.0001,0.0012').value ?? [];
  const good = stroke?.option.byLie.tee?.parts[0];
  if (stroke === undefined || good === undefined) throw new Error('no stroke');
  const finishRad = stroke.bearingRad + Math.atan2(good.acrossM, good.alongM);
  expect(finishRad).toBeCloseTo(Math.atan2(10, 120), 9);
});

test('paces are counted on the green', () => {
  const [middle] = named('8I@17,11R').value ?? [];
  const good = middle?.option.byLie.tee?.parts[0];
  const finishRad = (middle?.bearingRad ?? 9) + Math.atan2(good?.acrossM ?? 0, good?.alongM ?? 1);
  expect(Math.abs(finishRad)).toBeLessThan(0.02);
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
