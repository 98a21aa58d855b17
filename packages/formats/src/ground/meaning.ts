import type { Caution, Surface } from '@leeway/engine';
import type { Tags } from './feature.ts';

/** What a feature means for play. */
export type Meaning =
  | { readonly kind: 'hole' | 'pin' | 'tee' | 'green' | 'course' | 'coastline' | 'range' | 'outOfBounds' }
  /** Ground. As a line it is a strip of `widthM`, as a point a disc of `widthM` across; without `widthM` only areas count. */
  | { readonly kind: 'ground'; readonly surface: Surface; readonly widthM?: number; readonly water?: Water }
  | { readonly kind: 'caution'; readonly caution: Caution['kind'] };

/** A golf tag decides the colour of a penalty area; plain water is red. */
export interface Water {
  readonly red: boolean;
  readonly golf: boolean;
  /** Water, or ground that nobody may enter: no ball is played from it as it lies. */
  readonly barred?: true;
}

/** Widths where the map states none: a stream, a row of trees across its crowns, one tree's crown. */
const STREAM_M = 2;
const TREE_ROW_M = 8;
const TREE_M = 6;

const GOLF: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ['hole', { kind: 'hole' }],
  ['pin', { kind: 'pin' }],
  ['tee', { kind: 'tee' }],
  ['green', { kind: 'green' }],
  ['fairway', { kind: 'ground', surface: 'fairway' }],
  ['bunker', { kind: 'ground', surface: 'bunker' }],
  ['rough', { kind: 'ground', surface: 'rough' }],
  ['water_hazard', { kind: 'ground', surface: 'penalty', widthM: STREAM_M, water: { red: false, golf: true } }],
  ['lateral_water_hazard', { kind: 'ground', surface: 'penalty', widthM: STREAM_M, water: { red: true, golf: true } }],
  ['out_of_bounds', { kind: 'outOfBounds' }],
  ['driving_range', { kind: 'range' }],
  ['cartpath', { kind: 'caution', caution: 'path' }],
  ['cart_path', { kind: 'caution', caution: 'path' }],
  ['path', { kind: 'caution', caution: 'path' }],
  ['clubhouse', { kind: 'caution', caution: 'building' }],
]);

const PATHS: readonly string[] = [
  'path',
  'footway',
  'cycleway',
  'bridleway',
  'steps',
  'track',
  'pedestrian',
  'corridor',
];

/** Waterways that are no water to lose a ball in. */
const DRY_WATERWAYS: readonly string[] = [
  'dam',
  'weir',
  'lock_gate',
  'sluice_gate',
  'waterfall',
  'turning_point',
  'fuel',
  'boatyard',
  'water_point',
];

const PLAIN_WATER: Water = { red: true, golf: false, barred: true };

/** Values of `golf` that no meaning is known for. */
export const isUnknownGolf = (tags: Tags): boolean => {
  const golf = tags.get('golf');
  return golf !== undefined && !GOLF.has(golf) && golf !== 'course';
};

/** What a feature's tags mean, its golf tag first; undefined when they mean nothing for play. */
export function meaningOf(tags: Tags): Meaning | undefined {
  const golf = GOLF.get(tags.get('golf') ?? '');
  if (golf?.kind === 'ground' && golf.widthM !== undefined && golf.water !== undefined) {
    const water = isBarred(tags) ? { ...golf.water, barred: true as const } : golf.water;
    return { ...golf, widthM: metres(tags.get('width')) ?? golf.widthM, water };
  }
  if (golf !== undefined) return golf;
  if (tags.get('leisure') === 'golf_course') return { kind: 'course' };
  const [natural, landuse, waterway] = [tags.get('natural'), tags.get('landuse'), tags.get('waterway')];
  if (natural === 'coastline') return { kind: 'coastline' };
  if (waterway !== undefined && !DRY_WATERWAYS.includes(waterway)) {
    if (isUnderground(tags)) return undefined;
    return { kind: 'ground', surface: 'penalty', widthM: metres(tags.get('width')) ?? STREAM_M, water: PLAIN_WATER };
  }
  if (natural === 'water' || landuse === 'basin' || landuse === 'reservoir')
    return { kind: 'ground', surface: 'penalty', water: PLAIN_WATER };
  if (natural === 'wood' || landuse === 'forest' || natural === 'scrub') return { kind: 'ground', surface: 'recovery' };
  if (natural === 'tree' || natural === 'tree_row') {
    const widthM = metres(tags.get('diameter_crown')) ?? (natural === 'tree' ? undefined : metres(tags.get('width')));
    return { kind: 'ground', surface: 'recovery', widthM: widthM ?? (natural === 'tree' ? TREE_M : TREE_ROW_M) };
  }
  if (natural === 'sand' || natural === 'beach') return { kind: 'ground', surface: 'bunker' };
  const building = tags.get('building');
  if (building !== undefined && building !== 'no') return { kind: 'caution', caution: 'building' };
  const highway = tags.get('highway');
  if (highway !== undefined && !isUnderground(tags))
    return { kind: 'caution', caution: PATHS.includes(highway) || tags.has('golf_cart') ? 'path' : 'road' };
  return undefined;
}

/** Whether a golf water is water by another tag as well, or closed to everyone. */
const isBarred = (tags: Tags): boolean =>
  tags.get('natural') === 'water' || tags.has('water') || tags.has('waterway') || tags.get('access') === 'no';

const isUnderground = (tags: Tags): boolean => {
  const tunnel = tags.get('tunnel') ?? 'no';
  return tunnel !== 'no' || tags.get('location') === 'underground';
};

const UNIT_M: { readonly [unit: string]: number } = { '': 1, m: 1, ft: 0.3048, "'": 0.3048, cm: 0.01 };

/** A length such as `3`, `2.5 m` or `8 ft` in metres; undefined when it is none, or not between nought and 500 m. */
export function metres(text: string | undefined): number | undefined {
  const [, number, unit = ''] = /^\s*(\d+(?:\.\d+)?)\s*(m|ft|cm|')?\s*$/i.exec(text ?? '') ?? [];
  const value = Number(number) * (UNIT_M[unit.toLowerCase()] ?? NaN);
  return value > 0 && value <= 500 ? value : undefined;
}
