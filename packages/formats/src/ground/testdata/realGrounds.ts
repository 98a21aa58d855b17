import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../../../', import.meta.url));

/** The folder of real map extracts, which are no part of this repository: `LEEWAY_GROUNDS`, else beside the checkout. */
const folder = resolve(root, process.env['LEEWAY_GROUNDS'] ?? '../shared/reference/osm');

export const hasRealGrounds = existsSync(join(folder, 'expected-counts.json'));

export type Format = 'geojson' | 'overpass.json' | 'osm';
export const FORMATS: readonly Format[] = ['geojson', 'overpass.json', 'osm'];

export interface RealGround {
  readonly features: number;
  readonly counts: { readonly [tagAndShape: string]: number };
  text(format: Format): string;
}

/** The extracts that the folder's counts list. */
export function realGrounds(): RealGround[] {
  if (!hasRealGrounds) return [];
  const expected = JSON.parse(readFileSync(join(folder, 'expected-counts.json'), 'utf8')) as {
    [file: string]: { features: number; counts: { [tag: string]: number } };
  };
  return Object.entries(expected).map(([file, { features, counts }]) => ({
    features,
    counts,
    text: (format) => readFileSync(join(folder, file.replace(/geojson$/, format)), 'utf8'),
  }));
}
