import { expect, test } from 'vitest';
import { Usage } from './command.ts';
import {
  parseHeightM,
  parseLengthM,
  parseLonLat,
  parseNumber,
  parseSpeedMps,
  parseTemperatureC,
  parseWhole,
} from './quantities.ts';

test('a bare number is in the units, and a suffix wins', () => {
  expect(parseLengthM('x', '100', 'yd')).toBeCloseTo(91.44, 12);
  expect(parseLengthM('x', '100', 'm')).toBe(100);
  expect(parseLengthM('x', '150m', 'yd')).toBe(150);
  expect(parseLengthM('x', '12 yd', 'm')).toBeCloseTo(10.9728, 12);
  expect(parseHeightM('x', '300', 'yd')).toBeCloseTo(91.44, 12);
  expect(parseHeightM('x', '300ft', 'm')).toBeCloseTo(91.44, 12);
  expect(parseSpeedMps('x', '10', 'yd')).toBeCloseTo(4.4704, 12);
  expect(parseSpeedMps('x', '12mps', 'yd')).toBe(12);
  expect(parseTemperatureC('x', '68', 'yd')).toBeCloseTo(20, 12);
  expect(parseTemperatureC('x', '−40F', 'm')).toBeCloseTo(-40, 12);
});

test('numbers keep their range and places their order', () => {
  expect(parseNumber('humidity', '50', [0, 100])).toBe(50);
  expect(parseWhole('hole', '18', [1, 36])).toBe(18);
  expect(parseLonLat('from', '-3.1,54.2')).toEqual({ lon: -3.1, lat: 54.2 });
});

test.each([
  () => parseLengthM('x', '', 'yd'),
  () => parseLengthM('x', '12constructor', 'yd'),
  () => parseLengthM('x', 'NaN', 'yd'),
  () => parseLengthM('x', '1e999', 'yd'),
  () => parseNumber('x', '101', [0, 100]),
  () => parseWhole('x', '7.5', [1, 18]),
  () => parseLonLat('x', '3.1'),
  () => parseLonLat('x', '3.1,54.2,7'),
  () => parseLonLat('x', '54.2,-93.1'),
])('an unreadable quantity is wrong usage (%#)', (parse) => {
  expect(parse).toThrow(Usage);
});
