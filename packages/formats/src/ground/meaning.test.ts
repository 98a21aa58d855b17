import { expect, test } from 'vitest';
import { isAreaByTags } from './areaTags.ts';
import { meaningOf, metres } from './meaning.ts';

const tags = (text: string) => new Map(text.split(' ').map((t) => t.split('=') as [string, string]));

test.each([
  ['golf=green natural=water', { kind: 'green' }],
  ['golf=bunker natural=grass', { kind: 'ground', surface: 'bunker' }],
  ['golf=fringe natural=sand', { kind: 'ground', surface: 'bunker' }],
  [
    'golf=water_hazard natural=water',
    { kind: 'ground', surface: 'penalty', widthM: 2, water: { red: false, golf: true, barred: true } },
  ],
  [
    'golf=lateral_water_hazard width=5',
    { kind: 'ground', surface: 'penalty', widthM: 5, water: { red: true, golf: true } },
  ],
  [
    'golf=water_hazard access=no',
    { kind: 'ground', surface: 'penalty', widthM: 2, water: { red: false, golf: true, barred: true } },
  ],
  [
    'waterway=riverbank',
    { kind: 'ground', surface: 'penalty', widthM: 2, water: { red: true, golf: false, barred: true } },
  ],
  ['waterway=dam', undefined],
  ['natural=scrub', { kind: 'ground', surface: 'recovery' }],
  ['natural=beach', { kind: 'ground', surface: 'bunker' }],
  ['natural=tree diameter_crown=9', { kind: 'ground', surface: 'recovery', widthM: 9 }],
  ['highway=footway', { kind: 'caution', caution: 'path' }],
  ['highway=primary', { kind: 'caution', caution: 'road' }],
  ['highway=primary tunnel=yes', undefined],
  ['building=no', undefined],
  ['natural=grass', undefined],
])('%s', (text, meaning) => {
  expect(meaningOf(tags(text))).toEqual(meaning);
});

test.each([
  ['3', 3],
  ['2.5 m', 2.5],
  ['10 ft', 3.048],
  ["6'", 1.8288],
])('a width of %s', (text, width) => {
  expect(metres(text)).toBeCloseTo(width, 9);
});

test.each(['-2', 'wide', '1e9', '0', '501'])('no width in %s', (text) => {
  expect(metres(text)).toBeUndefined();
});

test.each([
  ['golf=hole', false],
  ['golf=cartpath area=yes', false],
  ['golf=green', true],
  ['barrier=wall landuse=commercial', false],
  ['highway=service junction=roundabout', false],
  ['highway=pedestrian area=yes', true],
  ['natural=wood', true],
  ['natural=coastline place=island', false],
  ['building=no landuse=forest', true],
  ['natural=wood area=no', false],
  ['waterway=stream', false],
  ['waterway=riverbank', true],
])('a closed way of %s: area %s', (text, expected) => {
  expect(isAreaByTags(tags(text))).toBe(expected);
});
