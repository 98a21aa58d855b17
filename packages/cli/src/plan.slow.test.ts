import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { planSchema } from '@leeway/contract';
import { describe, expect, test } from 'vitest';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import { plan } from './plan.ts';
import { planFiles } from './testdata/planFiles.ts';

/** Real map extracts are no part of this repository: `LEEWAY_GROUNDS` names their folder. */
const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = resolve(root, process.env['LEEWAY_GROUNDS'] ?? '../shared/reference/osm');
const list = join(folder, 'expected-counts.json');
const FORMATS = ['geojson', 'osm', 'overpass.json'] as const;

/** The extract with the most mapped features. */
function largest(): string {
  const files = JSON.parse(readFileSync(list, 'utf8')) as Record<string, { features: number }>;
  const [first] = Object.entries(files).toSorted(([, a], [, b]) => b.features - a.features);
  return join(folder, first?.[0] ?? '').replace(/geojson$/, '');
}

async function planned(ground: string, ...more: string[]) {
  let out = '';
  let err = '';
  const io = { out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const args = ['--ground', ground, '--player', planFiles().player, '--json', ...more];
  const code = await plan.run(parseArguments(args, { ...plan.options, ...COMMON_OPTIONS }), io);
  expect(code).toBe(0);
  return { document: planSchema.parse(JSON.parse(out)), err };
}

describe.skipIf(!existsSync(list))('on a real course', () => {
  test('every hole is planned to the green, with progress told', async () => {
    const { document, err } = await planned(`${largest()}geojson`);
    expect(document.holes).toHaveLength(18);
    expect(err).toContain('18 of 18');
    expect(document.attribution).toContain('OpenStreetMap');
    const total = document.holes.reduce((sum, h) => sum + h.expectedStrokes, 0);
    expect(document.round?.expectedStrokes).toBeCloseTo(total, 4);
    for (const hole of document.holes) {
      expect(hole.endsEarly).toBeUndefined();
      expect(hole.solver.converged).toBe(true);
      for (const shot of hole.shots) {
        expect(Object.values(shot.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 5);
        for (const other of shot.alternatives) expect(other.costsMore).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test('a hole read from GeoJSON, OSM XML and an OSM query gives one plan', async () => {
    const [hole] = (await planned(`${largest()}geojson`, '--hole', '2')).document.holes;
    for (const format of FORMATS.slice(1)) {
      const [other] = (await planned(`${largest()}${format}`, '--hole', '2')).document.holes;
      expect(other?.expectedStrokes).toBeCloseTo(hole?.expectedStrokes ?? 0, 3);
      expect(other?.shots.map((s) => s.option)).toEqual(hole?.shots.map((s) => s.option));
    }
  });
});
