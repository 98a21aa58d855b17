import type { Read } from '@leeway/contract';
import type { GivenFlag } from '@leeway/engine';

const PACES = /^(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*([LR])$/i;
const PLACE = /^([-+]?\d+(?:\.\d+)?)\s*,\s*([-+]?\d+(?:\.\d+)?)$/;

/**
 * A flag as typed: `LON,LAT` in degrees ("-3.1,54.2"), or `ON,SIDE` in paces of a yard ("16,7R": 16 on from the front of the green and 7
 * in from its right edge, both as seen along the line of play into the green).
 */
export function parseFlag(text: string): Read<GivenFlag> {
  const [, on, inside, side] = PACES.exec(text.trim()) ?? [];
  if (side !== undefined)
    return {
      value: { kind: 'paces', on: Number(on), in: Number(inside), side: side.toUpperCase() === 'L' ? 'L' : 'R' },
      faults: [],
    };
  const [, rawLon, rawLat] = PLACE.exec(text.trim()) ?? [];
  const [lon, lat] = [Number(rawLon ?? NaN), Number(rawLat ?? NaN)];
  if (Math.abs(lon) <= 180 && Math.abs(lat) <= 90) return { value: { kind: 'place', at: { lon, lat } }, faults: [] };
  const expected = 'LON,LAT in degrees such as -3.1,54.2, or ON,SIDE in paces such as 16,7R';
  return { faults: [{ code: 'bad-flag', level: 'refused', file: '--flag', found: text, expected }] };
}
