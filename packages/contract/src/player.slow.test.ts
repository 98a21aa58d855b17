import { playerModel, randomFrom, type PlayerFile, type Random } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { readPlayer } from './player.ts';

const RUNS = 2000;
const LONGEST_MS = 1000;

const part = { weight: 0.8, alongM: 140, acrossM: 1, sdAlongM: 7, sdAcrossM: 8, corr: 0.1 };
const fat = { weight: 0.2, alongM: 90, acrossM: 0, sdAlongM: 20, sdAcrossM: 9, corr: 0 };
const fit = {
  model: 'two-part',
  n: 12,
  carryM: 140,
  seCarryM: 2,
  directionDeg: 0.4,
  seDirectionDeg: 1,
  sdCarryM: 7,
  seLogSdCarry: 0.2,
  directionSdDeg: 4,
  seLogDirectionSd: 0.2,
  corr: 0,
  mishitShare: 0.2,
  seMishitShare: 0.05,
} as const;
const putting = [
  { distanceM: 0, strokes: 1 },
  { distanceM: 10, strokes: 1.9 },
];
const VALID: readonly PlayerFile[] = [
  {
    version: 1,
    name: 'A',
    handicapIndex: 12,
    units: 'yd',
    clubs: [
      { name: 'Driver', claimedCarryM: 190 },
      { name: '7i', loftDeg: 34, swings: ['half'] },
    ],
    putting,
  },
  {
    version: 1,
    name: 'B',
    patterns: [{ club: '7i', swing: 'full', components: [part, fat], fit }],
    onCourse: { distanceSdPct: 6, mishitShare: 0.1 },
    putting,
  },
  {
    version: 1,
    name: 'C',
    patterns: [
      { club: 'DR', swing: 'full', lie: 'tee', components: [part, fat], rest: true },
      { club: '7i', swing: 'full', components: [part, fat] },
    ],
    lies: { rough: { distance: 0.9, spread: 1.3 } },
    putting: { sdAngleDeg: 1.5, sdDistance: 0.08, pastM: 0.3, captureM: 1 },
    shortGame: { spread: 1.2, mishitShare: 0.2 },
  },
];
const VALUES: readonly string[] = [
  'null',
  'true',
  '-1',
  '0',
  '1e9',
  '1e999',
  '-0',
  '1e-300',
  '""',
  '"x"',
  '[]',
  '{}',
  '[[[[]]]]',
  '{"__proto__":{}}',
  '"\\ud800"',
  '"\\u0000"',
  `"${'n'.repeat(500)}"`,
];
const PIECES: readonly string[] = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '\\',
  '1',
  '.',
  'e',
  '-',
  'NaN',
  '\u2028',
  '\0',
  '"constructor":1,',
  '"__proto__":{"version":1},',
  '['.repeat(500),
];

/** Either the text is cut and spliced, or a value somewhere in it becomes another. */
function mutate(text: string, random: Random): string {
  let now = text;
  const times = 1 + random.below(3);
  for (let i = 0; i < times; i++) {
    if (random.below(2) === 0) {
      const spots = [...now.matchAll(/(?<=[:,[])(?:-?\d[\d.e-]*|"[^"]*"(?!:)|\{[^{}]*\}|\[[^[\]]*\])/g)];
      const spot = spots[random.below(spots.length)];
      if (spot !== undefined)
        now =
          now.slice(0, spot.index) +
          (VALUES[random.below(VALUES.length)] ?? '') +
          now.slice(spot.index + spot[0].length);
    } else {
      const at = random.below(now.length + 1);
      const cut = random.below(2) === 0 ? 0 : random.below(12);
      now =
        now.slice(0, at) +
        (random.below(2) === 0 ? (PIECES[random.below(PIECES.length)] ?? '') : '') +
        now.slice(at + cut);
    }
  }
  return now;
}

describe('Player files that went wrong', () => {
  it(`end in a player or coded faults, quickly: ${RUNS} mutations`, () => {
    const random = randomFrom(7);
    let slowest = 0;
    let good = 0;
    for (let i = 0; i < RUNS; i++) {
      const text = mutate(JSON.stringify(VALID[i % VALID.length]), random);
      const start = performance.now();
      const { value, faults } = readPlayer(text, 'x.json');
      const model = value === undefined ? undefined : playerModel(value);
      slowest = Math.max(slowest, performance.now() - start);
      if ((value === undefined) !== faults.some((f) => f.level === 'refused'))
        throw new Error(`neither or both: ${text}`);
      if (!faults.every((f) => /^[a-z-]+$/.test(f.code) && f.found !== '' && f.expected !== ''))
        throw new Error(JSON.stringify(faults));
      if (model === undefined) continue;
      good++;
      const parts = model.options.flatMap((o) => Object.values(o.byLie).flatMap((p) => p.parts));
      if (!parts.every((p) => Object.values(p).every((x) => Number.isFinite(x)) && p.sdAlongM > 0 && p.sdAcrossM > 0))
        throw new Error(`not finite: ${text}`);
      if (!model.putting.every((row) => Number.isFinite(row.strokes))) throw new Error(`putting not finite: ${text}`);
    }
    expect(slowest).toBeLessThan(LONGEST_MS);
    expect(good).toBeGreaterThan(RUNS / 20);
    expect(good).toBeLessThan(RUNS / 1.5);
  });
});
