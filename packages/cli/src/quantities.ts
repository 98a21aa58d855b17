import type { GeoPoint } from '@leeway/engine';
import { FOOT_M, YARD_M } from '@leeway/engine';
import type { Given, OptionSpec } from './command.ts';
import { Usage } from './command.ts';

/** What numbers without a suffix are in, and what text is printed in: yards (mph, °F, feet) or metres (m/s, °C, metres). */
export type Units = 'yd' | 'm';

export const UNITS_OPTION: OptionSpec = { kind: 'text', value: 'yd|m', help: 'yards (default) or metres' };

/** `--units yd|m`, yards unless said. Throws `Usage`. */
export function unitsOf(given: Given): Units {
  const text = given.text('units') ?? 'yd';
  if (text !== 'yd' && text !== 'm') throw new Usage(`--units: found "${text}"; expected yd or m`);
  return text;
}

interface Scale {
  readonly factor: number;
  readonly offset?: number;
}
type Suffixes = { readonly [suffix: string]: Scale };

const LENGTHS: Suffixes = { m: { factor: 1 }, yd: { factor: YARD_M }, ft: { factor: FOOT_M }, km: { factor: 1000 } };
/** Mile = 1760 yd and knot = 1852 m/h, both exact by definition. */
const SPEEDS: Suffixes = {
  mps: { factor: 1 },
  'm/s': { factor: 1 },
  mph: { factor: (1760 * YARD_M) / 3600 },
  kmh: { factor: 1 / 3.6 },
  'km/h': { factor: 1 / 3.6 },
  kn: { factor: 1852 / 3600 },
};
const TEMPERATURES: Suffixes = {
  C: { factor: 1 },
  '°C': { factor: 1 },
  F: { factor: 5 / 9, offset: -160 / 9 },
  '°F': { factor: 5 / 9, offset: -160 / 9 },
};

/** A distance over the ground in metres: `150m`, `12yd`, `40ft`, or a bare number in the units. Throws `Usage` naming the option. */
export const parseLengthM = (option: string, text: string, units: Units): number =>
  parseQuantity(option, text, LENGTHS, units, 'a distance like 150yd or 137m');

/** A height in metres: bare numbers are feet or metres. */
export const parseHeightM = (option: string, text: string, units: Units): number =>
  parseQuantity(option, text, LENGTHS, units === 'yd' ? 'ft' : 'm', 'a height like 300ft or 90m');

/** A speed in metres a second: bare numbers are mph or m/s. */
export const parseSpeedMps = (option: string, text: string, units: Units): number =>
  parseQuantity(option, text, SPEEDS, units === 'yd' ? 'mph' : 'mps', 'a speed like 12mph or 5mps');

/** A temperature in °C: bare numbers are °F or °C. */
export const parseTemperatureC = (option: string, text: string, units: Units): number =>
  parseQuantity(option, text, TEMPERATURES, units === 'yd' ? 'F' : 'C', 'a temperature like 68F or 20C');

/** A length that is always in metres unless a suffix says otherwise. */
export const parseMetres = (option: string, text: string): number =>
  parseQuantity(option, text, LENGTHS, 'm', 'a length in metres like 2');

/** A plain number of any size. Throws `Usage`. */
export function parseFreeNumber(option: string, text: string): number {
  const { number, rest } = splitNumber(text);
  if (number === undefined || rest !== '') throw unexpected(option, text, 'a number');
  return number;
}

function parseQuantity(option: string, text: string, suffixes: Suffixes, bare: string, expected: string): number {
  const { number, rest } = splitNumber(text);
  const suffix = rest === '' ? bare : rest;
  const scale = Object.hasOwn(suffixes, suffix) ? suffixes[suffix] : undefined;
  if (number === undefined || !scale) throw unexpected(option, text, expected);
  return number * scale.factor + (scale.offset ?? 0);
}

/** A plain number within a range, both ends included. Throws `Usage`. */
export function parseNumber(option: string, text: string, [from, to]: readonly [number, number]): number {
  const { number, rest } = splitNumber(text);
  if (number === undefined || rest !== '' || number < from || number > to) {
    throw unexpected(option, text, `a number from ${from} to ${to}`);
  }
  return number;
}

/** A whole number within a range, both ends included. Throws `Usage`. */
export function parseWhole(option: string, text: string, [from, to]: readonly [number, number]): number {
  const { number, rest } = splitNumber(text);
  if (number === undefined || rest !== '' || !Number.isInteger(number) || number < from || number > to) {
    throw unexpected(option, text, `a whole number from ${from} to ${to}`);
  }
  return number;
}

/** A place as `LON,LAT` in degrees. Throws `Usage`. */
export function parseLonLat(option: string, text: string): GeoPoint {
  const [lon, lat, ...more] = text.split(',').map(splitNumber);
  const expected = 'LON,LAT in degrees, like -3.1,54.2';
  if (lon?.number === undefined || lat?.number === undefined || lon.rest !== '' || lat.rest !== '' || more.length > 0) {
    throw unexpected(option, text, expected);
  }
  if (Math.abs(lon.number) > 180 || Math.abs(lat.number) > 90) {
    throw unexpected(option, text, `${expected}, longitude first`);
  }
  return { lon: lon.number, lat: lat.number };
}

/** A decimal number, with a minus sign of either shape, and what stands after it. */
function splitNumber(text: string): { readonly number: number | undefined; readonly rest: string } {
  const found = /^\s*([-−+]?)((?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(.*?)\s*$/i.exec(text);
  const [, sign = '', digits = '', rest = ''] = found ?? [];
  const size = Number(digits);
  if (!found || !Number.isFinite(size)) return { number: undefined, rest: text };
  return { number: sign === '' || sign === '+' ? size : -size, rest };
}

const unexpected = (option: string, text: string, expected: string): Usage =>
  new Usage(`--${option}: found "${text}"; expected ${expected}`);
