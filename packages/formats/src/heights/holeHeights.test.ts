import { heightOn } from '@leeway/engine';
import { expect, test } from 'vitest';
import { readGround } from '../ground/readGround.ts';

const at = (lon: number, lat: number): [number, number] => [lon, lat];
const ring = (lon: number, lat: number, half: number) => [
  at(lon - half, lat - half),
  at(lon + half, lat - half),
  at(lon + half, lat + half),
  at(lon - half, lat + half),
  at(lon - half, lat - half),
];
const feature = (type: string, coordinates: unknown, properties: object) => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
});
const map = (spots: readonly object[]): string =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: [
      feature('LineString', [at(0, 54), at(0, 54.003)], { golf: 'hole', ref: '1', par: '4' }),
      feature('Polygon', [ring(0, 54.003, 0.0001)], { golf: 'green' }),
      feature('Polygon', [ring(0, 54, 0.00005)], { golf: 'tee' }),
      ...spots,
    ],
  });
const spot = (lat: number, ele: string) => feature('Point', at(0, lat), { ele });
const hole = (text: string, options = {}) => readGround(text, 'g.geojson', options).value?.holes[0];

test('a hole takes its heights from three spot heights or more, in metres', () => {
  const { heights } = hole(map([spot(54, '20'), spot(54.0015, '24 m'), spot(54.003, '30.5')])) ?? {};
  expect(heights?.from).toBe('spot heights');
  expect(heights && heightOn(heights, 0, 0)).toBeCloseTo(20, 0);
  expect(heights && heightOn(heights, 0, 334)).toBeCloseTo(30.5, 0);
});

test('with fewer, or none that can be, the ground is level', () => {
  expect(hole(map([spot(54, '20'), spot(54.003, '30')]))?.heights).toBeUndefined();
  expect(hole(map([spot(54, '20'), spot(54.001, 'high'), spot(54.003, '99999')]))?.heights).toBeUndefined();
});

test('a raster goes before the map’s own spots', () => {
  const spots = [spot(54, '20'), spot(54.0015, '24'), spot(54.003, '30')];
  const { heights } = hole(map(spots), { heights: () => 7 }) ?? {};
  expect(heights?.from).toBe('raster');
  expect(heights && heightOn(heights, 0, 100)).toBe(7);
});
