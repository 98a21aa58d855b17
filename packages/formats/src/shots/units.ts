import { FOOT_M, YARD_M } from '@leeway/engine';

/** What kind of measure a unit is of. */
export type Dimension = 'length' | 'speed' | 'angle' | 'rotation' | 'temperature';

export interface Unit {
  readonly dimension: Dimension;
  /** Into metres, metres a second, degrees, turns a minute, degrees Celsius. */
  readonly toSi: (x: number) => number;
}

const times = (dimension: Dimension, factor: number): Unit => ({ dimension, toSi: (x) => x * factor });
const YARD = times('length', YARD_M);
const METRE = times('length', 1);
const FOOT = times('length', FOOT_M);
const MPH = times('speed', 1609.344 / 3600);
const MPS = times('speed', 1);
const KMH = times('speed', 1 / 3.6);

const UNITS: { readonly [word: string]: Unit } = {
  yd: YARD,
  yds: YARD,
  yard: YARD,
  yards: YARD,
  pace: YARD,
  paces: YARD,
  m: METRE,
  mtr: METRE,
  metre: METRE,
  metres: METRE,
  meter: METRE,
  meters: METRE,
  ft: FOOT,
  feet: FOOT,
  foot: FOOT,
  in: times('length', FOOT_M / 12),
  inch: times('length', FOOT_M / 12),
  inches: times('length', FOOT_M / 12),
  mm: times('length', 0.001),
  cm: times('length', 0.01),
  mph: MPH,
  'm/s': MPS,
  mps: MPS,
  'km/h': KMH,
  kmh: KMH,
  kph: KMH,
  deg: times('angle', 1),
  degs: times('angle', 1),
  degree: times('angle', 1),
  degrees: times('angle', 1),
  '°': times('angle', 1),
  rpm: times('rotation', 1),
  '°c': times('temperature', 1),
  c: times('temperature', 1),
  '°f': { dimension: 'temperature', toSi: (f) => ((f - 32) * 5) / 9 },
  f: { dimension: 'temperature', toSi: (f) => ((f - 32) * 5) / 9 },
};

/** The unit that a word names, brackets and points taken off; `undefined` if it names none. */
export function readUnit(word: string): Unit | undefined {
  const key = word
    .toLowerCase()
    .replace(/^[([{\s]+|[)\]}.\s]+$/g, '')
    .trim();
  return Object.hasOwn(UNITS, key) ? UNITS[key] : undefined;
}

/** The units of a column that does not say. */
export function defaultUnit(dimension: Dimension, units: 'yd' | 'm', small: boolean): Unit {
  switch (dimension) {
    case 'length':
      return units === 'm' ? METRE : small ? FOOT : YARD;
    case 'speed':
      return units === 'm' ? MPS : MPH;
    case 'temperature':
      return units === 'm' ? times('temperature', 1) : { dimension, toSi: (f) => ((f - 32) * 5) / 9 };
    case 'angle':
    case 'rotation':
      return times(dimension, 1);
  }
}
