import type { Fault } from '@leeway/contract';
import { fitSession, fittedPlayer, randomFrom, type Random } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { groupShots } from './groupShots.ts';
import { readShots } from './readShots.ts';
import { withoutRepeatedSessions } from './sessions.ts';

/** All of it by `npm run thorough`; a sample otherwise. */
const RUNS = process.env['LEEWAY_THOROUGH'] !== undefined ? 4000 : 1200;
const LONGEST_MS = 1000;

const VALID: readonly string[] = [
  'club,carry [m],side [m],spin\n7i,140.5,-3.1,"7,250"\n7i,138.2,4,6900\n,141,2,7100\nAverage,139.9,1,7083\nPW,101,1,9000\nPW,99.5,-2,9100\n',
  'Session of May\n\nClub;Carry;Side;Ball speed;Date\n;[yd];[yd];[mph];\nDriver;212,4;12,1 L;142,2;1.5.2031\nDriver;220,0;3,2R;144,0;1.5.2031\nFe7;140,1;0,4 L;118,0;1.5.2031\n',
  'CLUB\tCARRY_M\tSIDE_M\tswing\tplayer\n52°\t88\t\u22121\tfull\tKim\n52°\t60.5\t2\thalf\tKim\nClub\tCarry_m\tSide_m\tswing\tplayer\n9-iron\t120\t--\tfull\tKim\n',
];
const PIECES: readonly string[] = [
  '"',
  '""',
  ',',
  ';',
  '\t',
  '|',
  '\n',
  '\r',
  '\r\n',
  '\0',
  '\uFEFF',
  '\u2212',
  '\u00A0',
  '\uD800',
  'NaN',
  'Infinity',
  '1e309',
  '-1e308',
  '1e-320',
  '0',
  '-0',
  '--',
  'L',
  '4 L R',
  '9'.repeat(400),
  'x'.repeat(2500),
  ',,,,,,,,',
  'Average',
  'Std Dev',
  'club,carry',
  'club',
  'carry',
  '(yd)',
  '[',
  ']',
  '{',
  '=',
  'mph',
  '1,234,567',
  '1.234,5',
  '€',
  '🏌',
  '__proto__',
  'constructor',
];

/** One to six cuts, repeats, insertions, swaps or flipped bytes. */
function mutate(bytes: Uint8Array, random: Random): Uint8Array {
  let list = [...bytes];
  const times = 1 + random.below(6);
  for (let i = 0; i < times; i++) {
    const at = random.below(list.length + 1);
    const length = random.below(40);
    switch (random.below(6)) {
      case 0:
        list.splice(at, length);
        break;
      case 1:
        list.splice(at, 0, ...new TextEncoder().encode(PIECES[random.below(PIECES.length)]));
        break;
      case 2:
        list.splice(at, 0, ...list.slice(at, at + 200));
        break;
      case 3:
        list[at] = random.below(256);
        break;
      case 4:
        list = [...list.slice(at), ...list.slice(0, at)];
        break;
      default:
        list.splice(at, length, ...list.slice(random.below(list.length + 1)).slice(0, length));
    }
  }
  return Uint8Array.from(list);
}

const isCoded = (f: Fault): boolean =>
  /^[a-z-]+$/.test(f.code) && f.found !== '' && f.expected !== '' && f.file === 'x.csv';

/** Reads, groups and fits: what the command does. */
function wholeJob(bytes: Uint8Array, random: Random): readonly Fault[] {
  const { value, faults } = readShots(bytes, 'x.csv', { units: random.below(2) === 0 ? 'yd' : 'm' });
  const refused = faults.some((f) => f.level === 'refused');
  expect(value === undefined).toBe(refused);
  if (value === undefined) return faults;
  const { swings, faults: more } = groupShots(withoutRepeatedSessions(value).rows, []);
  for (const s of swings.slice(0, 6)) {
    const fits = fitSession({ version: 1, name: 'x' }, [s]);
    const { patterns = [] } = fittedPlayer({ version: 1, name: 'x' }, fits, 'yd');
    const numbers = patterns.flatMap((p) => p.components.flatMap((c) => Object.values(c)));
    expect(numbers.every((x) => Number.isFinite(x))).toBe(true);
  }
  return [...faults, ...more];
}

describe('shot files that went wrong', () => {
  it(`end in shots or coded faults, quickly: ${RUNS} mutations`, () => {
    const random = randomFrom(20_310_501);
    let slowest = 0;
    let refused = 0;
    for (let i = 0; i < RUNS; i++) {
      const original = new TextEncoder().encode(VALID[i % VALID.length]);
      const bytes = mutate(original, random);
      const start = performance.now();
      const faults = wholeJob(bytes, random);
      slowest = Math.max(slowest, performance.now() - start);
      if (!faults.every(isCoded)) throw new Error(`a fault without words: ${JSON.stringify(faults)}`);
      if (faults.some((f) => f.level === 'refused')) refused++;
    }
    expect(slowest).toBeLessThan(LONGEST_MS);
    expect(refused).toBeGreaterThan(RUNS / 50);
    expect(refused).toBeLessThan(RUNS / 2);
  });

  it('of the largest size are read or refused within two seconds', () => {
    const many = `club,carry [m],side [m]\n${'7i,140.25,1.5\n'.repeat(19_999)}`;
    const quotes = `club,carry [m]\n${'"7i,140\n'.repeat(200_000)}`;
    const commas = `club,carry [m]\n${','.repeat(10_000_000)}`;
    const oneLine = 'x'.repeat(20_000_000);
    const start = performance.now();
    expect(readShots(many, 'x.csv', { units: 'm' }).value).toHaveLength(19_999);
    for (const text of [quotes, commas, oneLine])
      expect(readShots(text, 'x.csv', { units: 'm' }).value).toBeUndefined();
    expect(performance.now() - start).toBeLessThan(2000);
  });
});
