import { wordFault } from '@leeway/contract';
import { expect, test } from 'vitest';
import { readGround } from './readGround.ts';
import { toGeoJson, toOsmJson, toOsmXml } from './testdata/made.ts';
import { TOLVANE } from './testdata/tolvane.ts';

/** A small seeded generator: mulberry32. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Mutation = (text: string, random: () => number) => string;

const at = (text: string, random: () => number): number => Math.floor(random() * text.length);
const span = (random: () => number): number => 1 + Math.floor(random() ** 3 * 400);
const put = (text: string, where: number, what: string, over = 0): string =>
  text.slice(0, where) + what + text.slice(where + over);
const pick = <T>(list: readonly [T, ...T[]], random: () => number): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

/** Replaces one of a text's numbers. */
const number = (text: string, random: () => number, change: (n: string) => string): string => {
  const numbers = [...text.matchAll(/-?\d+\.\d+|\d+/g)];
  const hit = numbers[Math.floor(random() * numbers.length)];
  return hit ? put(text, hit.index, change(hit[0]), hit[0].length) : text;
};

const MUTATIONS: readonly [Mutation, ...Mutation[]] = [
  (t, r) => put(t, at(t, r), String.fromCharCode(Math.floor(r() * 256)), 1),
  (t, r) =>
    put(
      t,
      at(t, r),
      pick(['"', '<', '>', '[', ']', '{', '}', ',', '&', '\0', '\r', '\uD800', 'é'], r),
      Math.floor(r() * 2),
    ),
  (t, r) => put(t, at(t, r), '', span(r)),
  (t, r) => {
    const [from, length] = [at(t, r), span(r)];
    return put(t, at(t, r), t.slice(from, from + length));
  },
  (t, r) => t.slice(0, at(t, r)),
  (t, r) =>
    number(t, r, () =>
      pick(['1e308', '-1e999', '9'.repeat(60), '-0', '1e-400', '181', '-91', 'NaN', 'null', '""', '0'], r),
    ),
  (t, r) => number(t, r, (n) => String(-Number(n))),
  (t, r) => number(t, r, (n) => String(Number(n) + (r() - 0.5) * 10 ** (2 - 7 * r()))),
  (t, r) =>
    t.replaceAll(/\[(-?\d+\.?\d*),(-?\d+\.?\d*)\]/g, (whole, a, b) =>
      r() < 0.05 ? `[${String(b)},${String(a)}]` : whole,
    ),
  (t, r) =>
    t.replaceAll(/lat="([^"]*)" lon="([^"]*)"/g, (whole, a, b) =>
      r() < 0.05 ? `lat="${String(b)}" lon="${String(a)}"` : whole,
    ),
  (t, r) => put(t, at(t, r), pick(['[', '{"a":', '<a>'], r).repeat(10 ** Math.floor(1 + r() * 4.3))),
  (t, r) =>
    put(
      t,
      at(t, r),
      pick(['&amp;', '&x;', '&#0;', '&#x110000;', '<!DOCTYPE osm>', '<!--', ']]>', '<![CDATA[', '<?xml?>'], r),
    ),
  (t, r) => number(t, r, () => pick(['11', '13', '31', '41', '71', '81', '900001', '900007', '800001'], r)),
  (t, r) =>
    t.replaceAll(/golf|green|hole|fairway|way|node|Polygon|LineString|outer/g, (w) =>
      r() < 0.02
        ? pick(['green', 'hole', 'tee', 'water_hazard', 'out_of_bounds', 'Point', 'MultiPolygon', 'inner', ''], r)
        : w,
    ),
];

test('4,000 mutations of a valid file end in a value or in coded faults, each within a second', () => {
  const originals: readonly [string, ...string[]] = [
    toGeoJson(TOLVANE),
    toOsmXml(TOLVANE),
    toOsmJson(TOLVANE, true),
    toOsmJson(TOLVANE, false),
  ];
  const random = generator(20_240_607);
  const ends = { read: 0, refused: 0 };
  let slowestMs = 0;
  for (let run = 0; run < 4000; run++) {
    let text = pick(originals, random);
    for (let n = 1 + Math.floor(random() * 3); n > 0; n--) text = pick(MUTATIONS, random)(text, random);
    const start = performance.now();
    const { value, faults } = readGround(text, 'map');
    slowestMs = Math.max(slowestMs, performance.now() - start);
    const refused = faults.some((f) => f.level === 'refused');
    expect(value === undefined).toBe(refused);
    ends[refused ? 'refused' : 'read']++;
    for (const fault of faults) {
      expect(fault.code).toMatch(/^[a-z-]+$/);
      expect(wordFault(fault)).not.toMatch(/\n|undefined|\[object/);
    }
    for (const hole of value?.holes ?? []) {
      const spots = [hole.ball, hole.flag, ...hole.line, ...hole.areas.flatMap((a) => [...a.polygon.outer])];
      expect(spots.every((p) => Number.isFinite(p.eastM) && Number.isFinite(p.northM))).toBe(true);
    }
  }
  expect(slowestMs).toBeLessThan(1000);
  // Both ends are met often, so that the mutations test the readers and not only the parsers.
  expect(Math.min(ends.read, ends.refused)).toBeGreaterThan(800);
});
