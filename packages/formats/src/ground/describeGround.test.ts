import { expect, test } from 'vitest';
import { describeGround } from './describeGround.ts';
import { toOsmXml } from './testdata/made.ts';
import { TOLVANE } from './testdata/tolvane.ts';

test('a summary counts features and says how each hole reads', () => {
  const { value, faults } = describeGround(toOsmXml(TOLVANE), 'tolvane.osm');
  expect(faults).toEqual([]);
  expect(value?.features).toBe(TOLVANE.length);
  expect(value?.counts).toMatchObject({
    'golf=fairway|Polygon': 3,
    'golf=tee|Point': 1,
    'waterway=stream|LineString': 1,
  });
  expect(value?.holes[0]).toMatchObject({
    hole: '1',
    par: 4,
    flagFrom: 'pin',
    areas: { green: 1, bunker: 2, out: 1 },
    cautions: 6,
  });
  expect(value?.holes[0]?.lengthM).toBeCloseTo(200.25 + 150.33, 1);
});

test('a file that is refused has no summary', () => {
  expect(describeGround('{}', 'f').value).toBeUndefined();
});
