import type { ShotColumn } from '@leeway/contract';
import { readUnit, type Dimension, type Unit } from './units.ts';

/** The trade's generic words for each column, as `plain` makes them. */
const WORDS: { readonly [C in ShotColumn]: readonly string[] } = {
  club: ['club', 'clubs', 'club name', 'club type', 'club used'],
  carry: ['carry', 'carry distance', 'carry dist', 'carry length', 'distance carry', 'carried'],
  'down the line': ['down the line', 'carry down the line', 'down line', 'along'],
  side: [
    'side',
    'offline',
    'off line',
    'carry side',
    'side carry',
    'carry offline',
    'offline carry',
    'lateral',
    'side distance',
    'carry lateral',
    'lateral carry',
    'across',
    'left right',
    'l r',
    'side at carry',
    'offline at carry',
  ],
  swing: ['swing', 'swing length', 'swing type', 'length of swing'],
  total: ['total', 'total distance', 'total dist', 'total length', 'distance total'],
  'ball speed': ['ball speed', 'ballspeed', 'speed of ball'],
  launch: ['launch', 'launch angle', 'vertical launch', 'vertical launch angle', 'launch vertical'],
  direction: [
    'direction',
    'launch direction',
    'horizontal launch',
    'horizontal launch angle',
    'launch horizontal',
    'start direction',
  ],
  spin: ['spin', 'spin rate', 'total spin', 'backspin', 'back spin'],
  axis: ['axis', 'spin axis', 'axis of spin'],
  apex: ['apex', 'peak height', 'max height', 'maximum height', 'height', 'apex height', 'peak'],
  descent: ['descent', 'descent angle', 'landing angle', 'land angle', 'angle of descent'],
  strike: ['strike', 'contact', 'strike quality'],
  'height on face': ['height on face', 'impact height', 'strike height', 'face height'],
  'tee height': ['tee height', 'height of tee'],
  'low point': ['low point', 'lowpoint'],
  ball: ['ball', 'ball type', 'balls'],
  player: ['player', 'player name', 'golfer', 'name'],
  date: ['date', 'time', 'date time', 'datetime', 'day', 'timestamp', 'session date'],
  temperature: ['temperature', 'temp', 'air temperature'],
  altitude: ['altitude', 'elevation'],
  'wind speed': ['wind speed', 'wind'],
  'wind from': ['wind from', 'wind direction'],
  bearing: ['bearing', 'target bearing', 'heading'],
  slope: ['slope', 'target height', 'height difference', 'elevation change'],
};

/** Columns that are often there and that nothing here needs. */
const UNUSED = new Set([
  'club speed',
  'clubhead speed',
  'club head speed',
  'smash',
  'smash factor',
  'roll',
  'run',
  'side total',
  'total side',
  'offline total',
  'total offline',
  'sidespin',
  'side spin',
  'attack angle',
  'angle of attack',
  'club path',
  'path',
  'face angle',
  'face to path',
  'face to target',
  'dynamic loft',
  'loft',
  'spin loft',
  'hang time',
  'flight time',
  'time of flight',
  'tag',
  'tags',
  'comment',
  'comments',
  'note',
  'notes',
  'shot',
  'shot number',
  'shot no',
  'no',
  'nr',
  'number',
  'id',
  'session',
  'curve',
  'humidity',
  'pressure',
  'landing speed',
  'low point height',
]);

const DIMENSIONS: { readonly [C in ShotColumn]?: Dimension } = {
  carry: 'length',
  'down the line': 'length',
  side: 'length',
  total: 'length',
  'ball speed': 'speed',
  launch: 'angle',
  direction: 'angle',
  spin: 'rotation',
  axis: 'angle',
  apex: 'length',
  descent: 'angle',
  temperature: 'temperature',
  altitude: 'length',
  'wind speed': 'speed',
  'wind from': 'angle',
  bearing: 'angle',
  slope: 'length',
};

/** What kind of measure a column holds; `undefined` for words. */
export const dimensionOf = (column: ShotColumn): Dimension | undefined => DIMENSIONS[column];

/** Heights are in feet where lengths are in yards. */
export const isHeight = (column: ShotColumn): boolean => ['apex', 'altitude', 'slope'].includes(column);

const BY_WORD = new Map<string, ShotColumn>(
  (Object.entries(WORDS) as [ShotColumn, readonly string[]][]).flatMap(([column, words]) =>
    words.map((w) => [w, column] as const),
  ),
);

/** A heading as it is compared: lower case, letters and figures only, brackets taken off. */
export const plainHeading = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[([{][^)\]}]*[)\]}]?/g, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

export type Meaning =
  { readonly kind: 'column'; readonly column: ShotColumn } | { readonly kind: 'unused' } | { readonly kind: 'unknown' };

export interface Heading {
  readonly text: string;
  readonly meaning: Meaning;
  readonly unit?: Unit;
}

/** What a heading means and the unit it gives: in brackets (`Carry (yd)`), as a suffix (`carry_yds`), or after a comma. */
export function readHeading(text: string, map: ReadonlyMap<string, ShotColumn | 'ignore'> | undefined): Heading {
  const bracketed = /[([{]\s*([^)\]}]*)[)\]}]?/.exec(text)?.[1];
  const plain = plainHeading(text);
  const words = plain.split(' ');
  const suffix = words.length > 1 ? readUnit(words.at(-1) ?? '') : undefined;
  const fromBracket = bracketed === undefined ? undefined : readUnit(bracketed.split(/[,;]/)[0] ?? '');
  const withoutSuffix = suffix === undefined ? plain : words.slice(0, -1).join(' ');
  const mapped = map?.get(plain) ?? map?.get(text.trim().toLowerCase());
  const meaning =
    mapped === undefined
      ? meaningOf(plain, withoutSuffix)
      : mapped === 'ignore'
        ? ({ kind: 'unused' } as const)
        : ({ kind: 'column', column: mapped } as const);
  const unit = fromBracket ?? suffix;
  return { text, meaning, ...(unit === undefined ? {} : { unit }) };
}

function meaningOf(plain: string, withoutSuffix: string): Meaning {
  const column = BY_WORD.get(plain) ?? BY_WORD.get(withoutSuffix);
  if (column !== undefined) return { kind: 'column', column };
  return plain === '' || UNUSED.has(plain) || UNUSED.has(withoutSuffix) ? { kind: 'unused' } : { kind: 'unknown' };
}
