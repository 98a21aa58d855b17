import type { Read } from '@leeway/contract';
import type { GeoPoint } from '@leeway/engine';

/** Heights of the ground by longitude and latitude, metres; `undefined` where the raster has none. */
export type HeightRaster = (at: GeoPoint) => number | undefined;

const HEADINGS = [
  'ncols',
  'nrows',
  'xllcorner',
  'yllcorner',
  'xllcenter',
  'yllcenter',
  'cellsize',
  'nodata_value',
] as const;
type Heading = (typeof HEADINGS)[number];
const EXPECTED =
  'an ASCII grid in degrees of longitude and latitude: ncols, nrows, xllcorner, yllcorner, cellsize, then heights in metres';
const MOST_CELLS = 25_000_000;

/**
 * Reads an elevation raster as an ASCII grid: a head of names and figures, then rows of heights from the north. Positions must be degrees of longitude and
 * latitude (WGS 84): one in metres of a projection is refused. Between cell centres heights are straight.
 */
export function readAsciiGrid(text: string, file: string): Read<HeightRaster> {
  const refuse = (found: string, expected = EXPECTED): Read<HeightRaster> => ({
    faults: [{ code: 'bad-heights', level: 'refused', file, found, expected }],
  });
  const words = text
    .replace(/^\uFEFF/, '')
    .trim()
    .split(/\s+/);
  const head = new Map<Heading, number>();
  let at = 0;
  for (let name = headingOf(words[at]); name !== undefined; name = headingOf(words[at])) {
    const figure = Number(words[at + 1]);
    if (!Number.isFinite(figure)) return refuse(`${name} ${words[at + 1] ?? 'without a figure'}`);
    head.set(name, figure);
    at += 2;
  }
  const [columns, rows, cell] = [head.get('ncols') ?? 0, head.get('nrows') ?? 0, head.get('cellsize') ?? 0];
  const west = head.get('xllcenter') ?? (head.get('xllcorner') ?? NaN) + cell / 2;
  const south = head.get('yllcenter') ?? (head.get('yllcorner') ?? NaN) + cell / 2;
  const whole = Number.isInteger(columns) && Number.isInteger(rows) && columns > 1 && rows > 1;
  if (!whole || !(cell > 0) || Number.isNaN(west) || Number.isNaN(south)) return refuse('a head that lacks a figure');
  if (columns * rows > MOST_CELLS) return refuse(`${columns} by ${rows} cells`, `at most ${MOST_CELLS / 1e6} million`);
  if (west < -180 || west + columns * cell > 181 || south < -90 || south + rows * cell > 91)
    return refuse(`a grid from ${west}, ${south} with cells of ${cell}`);
  if (words.length - at !== columns * rows)
    return refuse(`${words.length - at} heights`, `${columns * rows}: ${rows} rows of ${columns}`);
  const none = head.get('nodata_value') ?? -9999;
  const heights = new Float32Array(columns * rows);
  for (let k = 0; k < heights.length; k++) {
    const h = Number(words[at + k]);
    if (!Number.isFinite(h)) return refuse(`"${words[at + k] ?? ''}" among the heights`, 'a number');
    heights[k] = h === none ? NaN : h;
  }
  return { value: rasterOf(heights, columns, rows, west, south, cell), faults: [] };
}

const headingOf = (word: string | undefined): Heading | undefined =>
  HEADINGS.find((name) => name === word?.toLowerCase());

function rasterOf(
  heights: Float32Array,
  columns: number,
  rows: number,
  west: number,
  south: number,
  cell: number,
): HeightRaster {
  return ({ lon, lat }) => {
    const x = (lon - west) / cell;
    const y = rows - 1 - (lat - south) / cell;
    if (x < -0.5 || y < -0.5 || x > columns - 0.5 || y > rows - 0.5) return undefined;
    const i = Math.min(columns - 2, Math.max(0, Math.floor(x)));
    const j = Math.min(rows - 2, Math.max(0, Math.floor(y)));
    const [fx, fy] = [Math.min(1, Math.max(0, x - i)), Math.min(1, Math.max(0, y - j))];
    const k = j * columns + i;
    const upper = heights[k]! + fx * (heights[k + 1]! - heights[k]!);
    const lower = heights[k + columns]! + fx * (heights[k + columns + 1]! - heights[k + columns]!);
    const height = upper + fy * (lower - upper);
    return Number.isNaN(height) ? undefined : height;
  };
}
