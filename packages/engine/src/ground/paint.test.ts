import { describe, expect, test } from 'vitest';
import type { Polygon } from '../geometry/polygon.ts';
import type { Surface } from '../quantity/lies.ts';
import type { Area } from './hole.ts';
import { inPaintOrder } from './paint.ts';

const box = (w: number, s: number, e: number, n: number, inner: Polygon['inner'] = []): Polygon => ({
  outer: [
    { eastM: w, northM: s },
    { eastM: e, northM: s },
    { eastM: e, northM: n },
    { eastM: w, northM: n },
  ],
  inner,
});
const area = (id: string, surface: Surface, polygon: Polygon): Area => ({ id, surface, polygon });
const ids = (areas: readonly Area[]): string[] => inPaintOrder(areas).map((a) => a.id);

describe('paint order', () => {
  test('rough, trees, fairway, green, tee, bunker, water, out of bounds; equals as they came', () => {
    const surfaces: Surface[] = ['out', 'penalty', 'bunker', 'tee', 'green', 'fairway', 'recovery', 'rough'];
    const apart = surfaces.map((s, i) => area(s, s, box(i * 20, 0, i * 20 + 9, 9)));
    expect(ids(apart)).toEqual(surfaces.toReversed());
    const twins = ['a', 'b', 'c'].map((id) => area(id, 'bunker', box(0, 0, 5, 5)));
    expect(ids(twins)).toEqual(['a', 'b', 'c']);
  });

  test('a green and its bunker on an island come after the water, inner ring or not', () => {
    const [green, bunker] = [
      area('green', 'green', box(40, 40, 60, 60)),
      area('bunker', 'bunker', box(45, 45, 50, 50)),
    ];
    const other = area('other bunker', 'bunker', box(200, 0, 210, 10));
    for (const inner of [[], [box(38, 38, 62, 62).outer]])
      expect(ids([bunker, other, area('lake', 'penalty', box(0, 0, 100, 100, inner)), green])).toEqual([
        'other bunker',
        'lake',
        'green',
        'bunker',
      ]);
  });

  test('a bunker that only reaches into the water stays under it', () => {
    expect(
      ids([area('lake', 'penalty', box(0, 0, 100, 100)), area('bunker', 'bunker', box(90, 90, 110, 110))]),
    ).toEqual(['bunker', 'lake']);
  });

  test('a pond on an island is water again, and an islet in that pond land', () => {
    const lake = area('lake', 'penalty', box(0, 0, 100, 100));
    const fairway = area('fairway', 'fairway', box(20, 20, 80, 80));
    const pond = area('pond', 'penalty', box(40, 40, 60, 60));
    const islet = area('islet', 'rough', box(45, 45, 50, 50));
    expect(ids([islet, pond, fairway, lake])).toEqual(['lake', 'fairway', 'pond', 'islet']);
  });

  test('an area of the same outline as the water is no island', () => {
    expect(ids([area('lake', 'penalty', box(0, 0, 9, 9)), area('sand', 'bunker', box(0, 0, 9, 9))])).toEqual([
      'sand',
      'lake',
    ]);
  });
});
