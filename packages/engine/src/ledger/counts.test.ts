import { expect, test } from 'vitest';
import { addCounts, countsOf, NO_COUNTS } from './counts.ts';
import type { PlayedShot } from './played.ts';

const flag = { eastM: 0, northM: 300 };
const at = (northM: number) => ({ eastM: 0, northM });
const stroke = (northM: number, lie: PlayedShot['from']['lie'], finish: PlayedShot['finish'], penaltyStrokes = 0) => ({
  shot: 1,
  from: { at: at(northM), lie },
  finish,
  penaltyStrokes,
});
const surfaceAt = (p: { readonly northM: number }) =>
  p.northM > 290 ? 'green' : p.northM === 150 ? 'fairway' : 'rough';

test('a fairway, a green in two and two putts', () => {
  const shots = [
    stroke(0, 'tee', at(150)),
    stroke(150, 'fairway', at(295)),
    stroke(295, 'green', at(299)),
    stroke(299, 'green', 'holed'),
  ];
  expect(countsOf({ par: 4, flag }, shots, surfaceAt)).toEqual({
    fairways: [1, 1],
    greens: [1, 1],
    upAndDown: [0, 0],
    putts: 2,
    penalties: 0,
  });
});

test('a missed green, up and down; a penalty counts where the green is reached', () => {
  const shots = [
    stroke(0, 'tee', at(140), 1),
    stroke(140, 'rough', at(280)),
    stroke(280, 'rough', at(299)),
    stroke(299, 'green', 'holed'),
  ];
  const counts = countsOf({ par: 4, flag }, shots, surfaceAt);
  expect(counts).toEqual({ fairways: [0, 1], greens: [0, 1], upAndDown: [1, 1], putts: 1, penalties: 1 });
  expect(addCounts(counts, addCounts(NO_COUNTS, counts)).upAndDown).toEqual([2, 2]);
});

test('a par 3 has no fairway; a hole in one is a green hit without a putt', () => {
  expect(countsOf({ par: 3, flag }, [stroke(150, 'tee', 'holed')], surfaceAt)).toEqual({
    fairways: [0, 0],
    greens: [1, 1],
    upAndDown: [0, 0],
    putts: 0,
    penalties: 0,
  });
});
