import { GROUND_CAPS } from '@leeway/contract';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';

/** Reads positions one by one; the first bad one refuses the file and stops it. */
export interface Positions {
  /** A place from a longitude and a latitude in degrees, whatever they are in the file; undefined when they are no place. */
  read(lon: unknown, lat: unknown, at: string): GeoPoint | undefined;
  /** True once the file is refused: there is no use in reading on. */
  readonly stopped: boolean;
}

export function positions(book: FaultBook): Positions {
  let [read, stopped] = [0, false];
  const refuse = (code: string, at: string, found: string, expected: string): undefined => {
    if (!stopped) book.add({ code, level: 'refused', found, expected }, at);
    stopped = true;
  };
  return {
    read(rawLon, rawLat, at) {
      if (stopped) return undefined;
      const [lon, lat] = [toNumber(rawLon), toNumber(rawLat)];
      if (++read > GROUND_CAPS.vertices)
        return refuse('too-many-vertices', at, `more than ${GROUND_CAPS.vertices} positions`, 'a smaller extract');
      if (!Number.isFinite(lon) || !Number.isFinite(lat))
        return refuse(
          'bad-coordinate',
          at,
          `longitude ${shown(rawLon)}, latitude ${shown(rawLat)}`,
          'two numbers of degrees',
        );
      if (Math.abs(lat) > 90 && Math.abs(lat) <= 180 && Math.abs(lon) <= 90)
        return refuse(
          'swapped-coordinates',
          at,
          `latitude ${lat}`,
          'longitude first, then latitude; these look swapped',
        );
      if (Math.abs(lat) > 90 || Math.abs(lon) > 180)
        return refuse(
          'bad-coordinate',
          at,
          `longitude ${lon}, latitude ${lat}`,
          'degrees: longitude -180 to 180, latitude -90 to 90',
        );
      return { lon, lat };
    },
    get stopped() {
      return stopped;
    },
  };
}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

const toNumber = (raw: unknown): number => {
  if (typeof raw === 'number') return raw;
  return typeof raw === 'string' && NUMBER.test(raw.trim()) ? Number(raw) : NaN;
};

const shown = (raw: unknown): string =>
  (typeof raw === 'number' ? raw.toString() : (JSON.stringify(raw) ?? 'missing')).slice(0, 30);
