import { areaSqM, insidePolygon } from '@leeway/engine';
import type { HoleGround } from '@leeway/engine';
import { describe, expect, test } from 'vitest';
import { countTags } from './describeGround.ts';
import { faultBook } from './faultBook.ts';
import { readMap } from './mapFile.ts';
import { readGround } from './readGround.ts';
import { FORMATS, hasRealGrounds, realGrounds } from './testdata/realGrounds.ts';
import type { RealGround } from './testdata/realGrounds.ts';

const holeLines = (g: RealGround): number => g.counts['golf=hole|LineString'] ?? 0;
const complete = realGrounds().find((g) => holeLines(g) > 18);
const sparse = realGrounds().find((g) => holeLines(g) === 0);

/** All of a hole that does not depend on the order in which a file lists its features. */
const seen = (h: HoleGround): unknown => ({
  ...h,
  frame: h.frame.origin,
  areas: h.areas.map((a) => `${a.id} ${a.surface} ${areaSqM(a.polygon).toFixed(3)}`).toSorted(),
  cautions: h.cautions.map((c) => `${c.id} ${c.kind} ${c.points.length}`).toSorted(),
});

describe.skipIf(!hasRealGrounds)('real ground', () => {
  test.each(FORMATS)('every extract has the listed features of each tag as .%s', (format) => {
    for (const ground of realGrounds()) {
      const map = readMap(ground.text(format), faultBook('map'));
      expect(map?.features).toHaveLength(ground.features);
      expect(countTags(map?.features ?? [])).toMatchObject(ground.counts);
    }
  });

  test.each(FORMATS)('the complete course as .%s: 18 holes, each ending in its green, par 3 to 5', (format) => {
    const { value, faults } = readGround(complete?.text(format) ?? '', 'map');
    expect(value?.holes.map((h) => h.hole)).toEqual(Array.from({ length: 18 }, (_, i) => String(i + 1)));
    expect(value?.course).toBeTruthy();
    expect(value?.attribution).toContain('OpenStreetMap contributors');
    for (const h of value?.holes ?? []) {
      const greens = h.areas.filter((a) => a.surface === 'green');
      expect(greens).toHaveLength(1);
      expect(greens.some((g) => insidePolygon(h.flag, g.polygon))).toBe(true);
      expect([3, 4, 5]).toContain(h.par);
      expect(h.parGuessed).toBe(h.hole === '17');
      expect(h.name === undefined).toBe(h.hole === '17');
      expect(h.flagFrom).toBe('pin');
    }
    expect(value?.holes.reduce((sum, h) => sum + h.par, 0)).toBeGreaterThanOrEqual(70);
    expect(faults.filter((f) => f.code === 'start-off-tee').map((f) => f.at?.split(' ')[1])).toEqual(['7']);
    expect(faults.filter((f) => f.level === 'left out').map((f) => f.code)).toEqual(['range-line']);
    expect(faults.length).toBeLessThan(8);
  });

  test('the complete course reads the same from its three formats', () => {
    const [first, ...others] = FORMATS.map((format) =>
      readGround(complete?.text(format) ?? '', 'map').value?.holes.map(seen),
    );
    for (const other of others) expect(other).toEqual(first);
  });

  test.each(FORMATS)('the sparse extract as .%s is refused in one clear line: greens, and no hole line', (format) => {
    const { value, faults } = readGround(sparse?.text(format) ?? '', 'map');
    expect(value).toBeUndefined();
    expect(faults.filter((f) => f.level === 'refused')).toMatchObject([
      { code: 'no-holes', found: 'no hole line, 4 greens' },
    ]);
    expect(faults.map((f) => f.code)).toEqual(expect.arrayContaining(['several-outlines', 'coastline']));
  });
});
