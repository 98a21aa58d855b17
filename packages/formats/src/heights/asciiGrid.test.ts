import { describe, expect, test } from 'vitest';
import { readAsciiGrid } from './asciiGrid.ts';

const HEAD = 'ncols 3\nnrows 2\nxllcorner -3.0\nyllcorner 54.0\ncellsize 0.001\nNODATA_value -9999\n';

describe('an elevation raster as an ASCII grid', () => {
  test('is read from the north down, straight between the middles of its cells', () => {
    const { value: at, faults } = readAsciiGrid(`${HEAD}10 20 30\n40 50 -9999\n`, 'heights.asc');
    expect(faults).toEqual([]);
    if (at === undefined) throw new Error('not read');
    expect(at({ lon: -2.9995, lat: 54.0015 })).toBeCloseTo(10, 6);
    expect(at({ lon: -2.9985, lat: 54.0005 })).toBeCloseTo(50, 6);
    expect(at({ lon: -2.999, lat: 54.001 })).toBeCloseTo(30, 4);
    expect(at({ lon: -2.9976, lat: 54.0006 })).toBeUndefined();
    expect(at({ lon: -4, lat: 54 })).toBeUndefined();
  });

  test.each([
    ['', 'a head that lacks a figure'],
    ['ncols 3\nnrows two\n', 'nrows two'],
    [`${HEAD}10 20 30 40 50`, '5 heights'],
    [`${HEAD}10 20 30 40 50 x`, '"x" among the heights'],
    [`${HEAD.replace('-3.0', '431200')}1 2 3 4 5 6`, 'a grid from 431200'],
    ['ncols 90000\nnrows 90000\nxllcorner 0\nyllcorner 0\ncellsize 0.001\n', '90000 by 90000 cells'],
  ])('%j is refused in one line', (text, found) => {
    const { value, faults } = readAsciiGrid(text, 'heights.asc');
    expect(value).toBeUndefined();
    expect(faults).toHaveLength(1);
    expect(faults[0]?.found).toContain(found);
  });
});
