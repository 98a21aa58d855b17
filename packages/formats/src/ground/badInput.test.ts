import type { Fault } from '@leeway/contract';
import { GROUND_CAPS } from '@leeway/contract';
import { describe, expect, test } from 'vitest';
import { readGround } from './readGround.ts';
import { degrees, toGeoJson, toOsmJson, toOsmXml } from './testdata/made.ts';
import { TOLVANE } from './testdata/tolvane.ts';

/** The one refusal of a text that cannot be used. */
function refusal(text: string): Fault | undefined {
  const { value, faults } = readGround(text, 'map');
  expect(value).toBeUndefined();
  const refused = faults.filter((f) => f.level === 'refused');
  expect(refused).toHaveLength(1);
  return refused[0];
}
const code = (text: string): string | undefined => refusal(text)?.code;

const geoJson = toGeoJson(TOLVANE);
const osmJson = toOsmJson(TOLVANE, false);
const xml = toOsmXml(TOLVANE);
const [lon, lat] = degrees([0, 350 + 15]);

describe('files that are no map', () => {
  test.each([
    ['', 'empty-file'],
    [' \n\t', 'empty-file'],
    ['club,carry\n7i,150', 'not-a-map'],
    ['[]', 'not-a-map'],
    ['{}', 'not-a-map'],
    ['{"type":"Topology"}', 'not-a-map'],
    ['{"type":"FeatureCollection"}', 'bad-geojson'],
    ['{"type":"FeatureCollection","features":[]}', 'no-holes'],
    ['{"elements":[]}', 'no-holes'],
    ['<gpx/>', 'not-a-map'],
    ['<osm/>', 'no-holes'],
    ['<osm><node id="1"', 'bad-xml'],
  ])('%j', (text, expected) => {
    expect(code(text)).toBe(expected);
  });

  test('a cut-off file is refused where it breaks', () => {
    expect(refusal(geoJson.slice(0, 900))).toMatchObject({ code: 'not-json', line: 1 });
    expect(refusal(xml.slice(0, 900))).toMatchObject({ code: 'bad-xml', line: expect.any(Number) as unknown });
  });

  test('a byte order mark is no fault', () => {
    for (const text of [geoJson, osmJson, xml]) expect(readGround(`\uFEFF${text}`, 'map').faults).toEqual([]);
  });
});

describe('hostile files', () => {
  test('a document type is refused, with or without entities', () => {
    const bomb = '<!DOCTYPE osm [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>';
    expect(code(xml.replace('<osm', `${bomb}<osm`))).toBe('doctype');
    expect(code(xml.replace('<osm', '<!DOCTYPE osm SYSTEM "file:///etc/passwd"><osm'))).toBe('doctype');
    expect(code(xml.replace('Long Acre', '&b;'))).toBe('bad-xml');
  });

  test('absurd nesting is refused', () => {
    expect(code(`{"type":${'['.repeat(1e6)}`)).toBe('too-deep');
    expect(code(`{"elements":${'{"a":'.repeat(1e5)}1`)).toBe('too-deep');
    expect(code(`<osm>${'<a>'.repeat(2e5)}`)).toBe('too-deep');
    expect(code(`<osm>${'<a>'.repeat(300)}${'</a>'.repeat(300)}</osm>`)).toBe('no-holes');
  });

  test('too many characters and too many vertices are refused', () => {
    expect(code(' '.repeat(GROUND_CAPS.characters + 1))).toBe('too-large');
    const many = `[${'[0,0],'.repeat(GROUND_CAPS.vertices)}[0,0]]`;
    expect(
      code(
        `{"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"LineString","coordinates":${many}}}]}`,
      ),
    ).toBe('too-many-vertices');
  });

  test('carriage returns by the hundred thousand take no time', () => {
    const start = performance.now();
    expect(
      readGround(xml.replace('<osm version="0.6">', `<osm version="0.6">${'\r'.repeat(3e5)}`), 'map').faults,
    ).toEqual([]);
    expect(performance.now() - start).toBeLessThan(1000);
  });

  test('tags named like an object’s own parts are only tags', () => {
    const text = geoJson.replace('"ref":"1"', '"__proto__":"x","constructor":"y","ref":"1"');
    expect(readGround(text, 'map').value?.holes).toHaveLength(3);
  });
});

describe('coordinates', () => {
  const position = `[${lon},${lat}]`;

  test.each([
    ['[null,47]', 'bad-coordinate'],
    ['["x",47]', 'bad-coordinate'],
    ['[1e999,47]', 'bad-coordinate'],
    ['[]', 'bad-coordinate'],
    ['7', 'bad-coordinate'],
    ['[-30,147]', 'swapped-coordinates'],
    ['[-230,47]', 'bad-coordinate'],
  ])('%s in place of a corner of the green', (raw, expected) => {
    const broken = geoJson.replaceAll(position, raw);
    expect(broken).not.toBe(geoJson);
    expect(code(broken)).toBe(expected);
  });

  test.each(['NaN', '', 'north', '0x10'])('%j for a latitude in XML', (raw) => {
    expect(refusal(xml.replace(/lat="[^"]*"/, `lat="${raw}"`))).toMatchObject({
      code: 'bad-coordinate',
      at: 'node/900000',
    });
  });

  /** The course with longitude and latitude swapped in the features that `which` picks. */
  const swapped = (which: (id: string) => boolean, text = geoJson): string => {
    const root = JSON.parse(text) as { features: { id: string; geometry: { coordinates: unknown } }[] };
    const turned = (c: unknown): unknown =>
      Array.isArray(c) ? (typeof c[0] === 'number' ? c.toReversed() : c.map(turned)) : c;
    for (const f of root.features) if (which(f.id)) f.geometry.coordinates = turned(f.geometry.coordinates);
    return JSON.stringify(root);
  };

  test('latitude before longitude is seen when golf would be played near a pole', () => {
    const farWest = geoJson.replaceAll('[-30', '[-80').replaceAll('[-29', '[-79');
    expect(readGround(farWest, 'map').faults).toEqual([]);
    expect(code(swapped(() => true, farWest))).toBe('swapped-coordinates');
  });

  test('latitude before longitude is seen by the mirrored and stretched shapes', () => {
    expect(refusal(swapped(() => true))).toMatchObject({
      code: 'swapped-coordinates',
      found: 'clockwise rings, all stretched north',
    });
  });

  test('clockwise rings alone are no fault', () => {
    const clockwise = TOLVANE.map((m) => (m.kind === 'area' ? { ...m, spots: m.spots.toReversed() } : m));
    expect(readGround(toGeoJson(clockwise), 'map').faults).toEqual([]);
  });

  test('a single swapped feature is seen by its distance from the rest', () => {
    expect(refusal(swapped((id) => id === 'way/31'))).toMatchObject({ code: 'swapped-coordinates', at: 'way/31' });
  });
});

describe('data that is cut or broken', () => {
  test('an element without an id or type, and deleted ones, are left out', () => {
    const dropped = readGround(xml.replace('<way id="51"', '<way id="51" visible="false"'), 'map');
    expect(dropped.faults).toMatchObject([{ code: 'deleted', level: 'note', at: 'way/51' }]);
    expect(dropped.value?.holes[0]?.areas.some((a) => a.id === 'way/51')).toBe(false);
    expect(readGround(xml.replace('<way id="51"', '<way'), 'map').faults.map((f) => f.code)).toEqual(['bad-element']);
    expect(readGround(osmJson.replace('"id":51', '"id":null'), 'map').faults.map((f) => f.code)).toEqual([
      'bad-element',
    ]);
    expect(
      readGround(osmJson.replace('"id":51', '"id":51,"action":"delete"'), 'map').faults.map((f) => f.code),
    ).toEqual(['deleted']);
  });

  test('a way with a node outside the file: ground is left out, a road keeps the parts inside', () => {
    const without = (id: number): string => {
      const root = JSON.parse(osmJson) as { elements: { id: number; nodes?: number[] }[] };
      const way = root.elements.find((e) => e.id === id);
      way?.nodes?.splice(1, 1, 1);
      return JSON.stringify(root);
    };
    expect(readGround(without(41), 'map').faults).toMatchObject([
      { code: 'outside-file', level: 'left out', at: 'way/41' },
    ]);
    expect(readGround(without(91), 'map').faults).toMatchObject([
      { code: 'outside-file', level: 'note', at: 'way/91' },
    ]);
    expect(readGround(without(11), 'map').value?.holes.map((h) => h.hole)).toEqual(['2', '3']);
  });

  test('a null member of a query’s geometry is a node outside its box', () => {
    const root = JSON.parse(toOsmJson(TOLVANE, true)) as { elements: { id: number; geometry?: unknown[] }[] };
    root.elements.find((e) => e.id === 41)?.geometry?.splice(1, 1, null);
    expect(readGround(JSON.stringify(root), 'map').faults).toMatchObject([{ code: 'outside-file', at: 'way/41' }]);
  });

  test('GeoJSON oddities are left out one by one', () => {
    const oddities: readonly [unknown, string | undefined][] = [
      [7, 'bad-feature'],
      [{ type: 'Feature', properties: { golf: 'bunker' }, geometry: null }, 'bad-geometry'],
      [{ type: 'Feature', properties: null, geometry: { type: 'Circle', coordinates: [] } }, 'bad-geometry'],
      [
        { type: 'Feature', properties: { golf: 'bunker' }, geometry: { type: 'Polygon', coordinates: [] } },
        'bad-geometry',
      ],
      [
        {
          type: 'Feature',
          properties: { golf: 'bunker' },
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [-30, 47],
                [-30, 47],
              ],
            ],
          },
        },
        'ring-few',
      ],
      [{ type: 'Feature', properties: {}, geometry: { type: 'LineString', coordinates: [[-30, 47]] } }, 'bad-geometry'],
      [{ type: 'Feature', properties: {}, geometry: { type: 'MultiPoint', coordinates: [[-30, 47]] } }, undefined],
    ];
    for (const [oddity, expected] of oddities) {
      const root = JSON.parse(geoJson) as { features: unknown[] };
      root.features.push(oddity);
      const { value, faults } = readGround(JSON.stringify(root), 'map');
      expect(value?.holes).toHaveLength(3);
      expect(faults.map((f) => f.code)).toEqual(expected === undefined ? [] : [expected]);
    }
  });

  test('an unclosed ring of a polygon is closed, and this is said', () => {
    const root = JSON.parse(geoJson) as { features: { id: string; geometry: { coordinates: unknown[][] } }[] };
    root.features.find((f) => f.id === 'way/41')?.geometry.coordinates[0]?.pop();
    const { value, faults } = readGround(JSON.stringify(root), 'map');
    expect(faults).toMatchObject([{ code: 'unclosed-ring', level: 'note', at: 'way/41' }]);
    expect(value?.holes[0]?.areas.some((a) => a.id === 'way/41')).toBe(true);
  });
});
