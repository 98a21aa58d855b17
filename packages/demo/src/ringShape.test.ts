import { expect, test } from 'vitest';
import { shareOfBox, strayFromEllipse } from './ringShape.ts';

const ellipse = Array.from({ length: 40 }, (_, i) => ({
  eastM: 20 * Math.cos((i * Math.PI) / 20),
  northM: 8 * Math.sin((i * Math.PI) / 20),
}));
const rectangle = [
  { eastM: 3, northM: 1 },
  { eastM: 9, northM: 9 },
  { eastM: 5, northM: 12 },
  { eastM: -1, northM: 4 },
];

test('an ellipse does not stray from its ellipse and fills π/4 of its box', () => {
  expect(strayFromEllipse(ellipse)).toBeCloseTo(0, 10);
  expect(shareOfBox(ellipse)).toBeCloseTo(Math.PI / 4, 1);
});

test('a turned rectangle fills its box', () => {
  expect(shareOfBox(rectangle)).toBeCloseTo(1, 10);
});
