import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A short made-up par 4 and a made-up player with few clubs, as files: quick to solve. Metres east and north of the tee. */
const TEE = { lon: -27.6, lat: 48.9 };
const NORTH_DEG = 1 / 111_220;
const EAST_DEG = NORTH_DEG / Math.cos((TEE.lat * Math.PI) / 180);

const place = ([east, north]: readonly [number, number]): [number, number] => [
  TEE.lon + east * EAST_DEG,
  TEE.lat + north * NORTH_DEG,
];

const feature = (properties: Record<string, string>, type: string, coordinates: unknown) => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
});

const box = (properties: Record<string, string>, [x0, y0, x1, y1]: readonly [number, number, number, number]) => {
  const corners = [[x0, y0], [x1, y0], [x1, y1], [x0, y1], [x0, y0]] as const;
  return feature(properties, 'Polygon', [corners.map(place)]);
};

const GROUND = {
  type: 'FeatureCollection',
  features: [
    feature({ golf: 'hole', ref: '4', par: '4' }, 'LineString', [place([0, 0]), place([0, 230])]),
    feature({ golf: 'pin', ref: '4' }, 'Point', place([4, 230])),
    box({ golf: 'tee' }, [-4, -5, 4, 4]),
    box({ golf: 'fairway' }, [-15, 90, 15, 210]),
    box({ golf: 'green' }, [-12, 216, 12, 244]),
    box({ golf: 'bunker' }, [-20, 220, -13, 232]),
    box({ golf: 'lateral_water_hazard', name: 'Mill Water' }, [16, 205, 40, 250]),
  ],
};

const pattern = (club: string, swing: string, alongM: number, spread: number) => ({
  club,
  swing,
  rest: true,
  components: [
    { weight: 0.9, alongM, acrossM: 0, sdAlongM: spread * alongM, sdAcrossM: spread * alongM, corr: 0 },
    { weight: 0.1, alongM: 0.8 * alongM, acrossM: 0, sdAlongM: 0.15 * alongM, sdAcrossM: 0.15 * alongM, corr: 0 },
  ],
});

const PLAYER = {
  version: 1,
  name: 'Wren Askew',
  clubs: [{ name: '3W' }, { name: '7I' }, { name: '54' }],
  patterns: [
    pattern('3W', 'full', 150, 0.06),
    pattern('7I', 'full', 110, 0.06),
    pattern('54', 'full', 75, 0.06),
    pattern('54', 'half', 45, 0.07),
    pattern('54', 'pitch', 22, 0.12),
    pattern('54', 'chip', 9, 0.2),
  ],
  putting: [
    { distanceM: 0, strokes: 1 },
    { distanceM: 1, strokes: 1.05 },
    { distanceM: 3, strokes: 1.6 },
    { distanceM: 10, strokes: 2 },
    { distanceM: 30, strokes: 2.4 },
  ],
};

export const HOLE = '4';

/** Writes both into a new folder and tells where they are. */
export function planFiles(): { readonly ground: string; readonly player: string } {
  const folder = mkdtempSync(join(tmpdir(), 'leeway-plan-'));
  const ground = join(folder, 'short.geojson');
  const player = join(folder, 'wren.json');
  writeFileSync(ground, JSON.stringify(GROUND));
  writeFileSync(player, JSON.stringify(PLAYER));
  return { ground, player };
}
