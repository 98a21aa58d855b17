import type { Tags } from './feature.ts';

/** Keys that make a closed way an area, with the values that say nothing. */
const AREA_KEYS: ReadonlyMap<string, readonly string[]> = new Map([
  ['building', ['no']],
  ['landuse', []],
  ['leisure', ['slipway', 'track']],
  ['natural', []],
  ['amenity', []],
  ['tourism', []],
  ['place', []],
  ['boundary', []],
  ['wetland', []],
  ['water', []],
]);

const LINE_NATURAL: readonly string[] = ['coastline', 'cliff', 'ridge', 'arete', 'tree_row', 'valley'];
const LINE_GOLF: readonly string[] = ['hole', 'cartpath', 'cart_path', 'path'];
const AREA_WATERWAYS: readonly string[] = ['riverbank', 'dock', 'boatyard', 'dam'];

/**
 * Is a closed way with these tags an area? `area` says it outright; a golf tag decides next (all but hole, path and cart path are
 * areas); a wall, a road or a coastline round something is a line; otherwise the keys that map ground do.
 */
export function isAreaByTags(tags: Tags): boolean {
  const said = tags.get('area');
  if (said === 'no') return false;
  const golf = tags.get('golf');
  if (golf !== undefined) return !LINE_GOLF.includes(golf);
  if (said === 'yes') return true;
  if (tags.has('barrier') || tags.has('highway')) return false;
  const waterway = tags.get('waterway');
  if (waterway !== undefined && AREA_WATERWAYS.includes(waterway)) return true;
  if (LINE_NATURAL.includes(tags.get('natural') ?? '')) return false;
  return [...AREA_KEYS].some(([key, exceptions]) => {
    const value = tags.get(key);
    return value !== undefined && !exceptions.includes(value);
  });
}
