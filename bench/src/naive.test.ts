import { expect, test } from 'vitest';
import { referenceHole, referencePlayer, referenceSolution } from '@leeway/engine/testdata';
import { naiveSolution } from './naiveSolution.ts';

const rival = naiveSolution(referenceHole('h1_par3_125'), referencePlayer('player'), {
  samples: 200,
  gridM: 5,
  aimStepDeg: 2,
  sweeps: 2,
  seed: 1,
});
const tee = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;

test('the rival finds the reference value of the tee, within its own noise', () => {
  const reference = referenceSolution('h1_par3_125').states[0];
  expect(Math.abs((rival.best(tee)[0]?.strokes ?? 0) - (reference?.V ?? 0))).toBeLessThan(0.03);
});

test('its chances and its costs by area add up', () => {
  const [best] = rival.best(tee);
  if (best === undefined) throw new Error('no stroke');
  const priced = rival.price(tee, best);
  expect(Object.values(priced.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 9);
  expect([...priced.areaCosts.values()].reduce((a, b) => a + b)).toBeCloseTo(priced.strokes, 9);
});
