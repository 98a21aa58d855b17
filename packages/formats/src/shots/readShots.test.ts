import type { Fault, ShotReading, ShotRow } from '@leeway/contract';
import { describe, expect, it } from 'vitest';
import { readShots, shotTable } from './readShots.ts';
import { withoutRepeatedSessions } from './sessions.ts';

const YARDS: ShotReading = { units: 'yd' };
const METRES: ShotReading = { units: 'm' };

const read = (
  text: string | Uint8Array,
  reading: ShotReading = METRES,
): { rows: readonly ShotRow[]; faults: readonly Fault[] } => {
  const { value, faults } = readShots(text, 'shots.csv', reading);
  return { rows: value ?? [], faults };
};
/** `club carry side`, rounded to a tenth of a metre. */
const brief = (rows: readonly ShotRow[]): string[] =>
  rows.map((r) => [r.club, r.carryM.toFixed(1), r.sideM?.toFixed(1)].filter((x) => x !== undefined).join(' '));
const codes = (faults: readonly Fault[]): string[] =>
  faults.map(
    (f) => `${f.code}${f.line === undefined ? '' : ` ${f.line}`}${f.column === undefined ? '' : `:${f.column}`}`,
  );

const PLAIN = 'club,carry [m],side [m]\n7i,140.5,-3.1\n7i,138,4\n';
const GOOD = ['7i 140.5 -3.1', '7i 138.0 4.0'];

const utf16 = (text: string, little: boolean, mark: boolean): Uint8Array => {
  const codesOf = Array.from((mark ? '\uFEFF' : '') + text, (c) => c.charCodeAt(0));
  return new Uint8Array(codesOf.flatMap((c) => (little ? [c & 255, c >> 8] : [c >> 8, c & 255])));
};
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('encodings', () => {
  it.each<[string, Uint8Array]>([
    ['UTF-8', bytes(PLAIN)],
    ['UTF-8 with its mark', bytes(`\uFEFF${PLAIN}`)],
    ['UTF-16, little end first', utf16(PLAIN, true, true)],
    ['UTF-16, big end first', utf16(PLAIN, false, true)],
    ['UTF-16 without a mark', utf16(PLAIN, true, false)],
  ])('%s', (_, file) => {
    expect(read(file)).toEqual({ rows: expect.any(Array), faults: [] });
    expect(brief(read(file).rows)).toEqual(GOOD);
  });

  it('falls back to Latin-1, and says so', () => {
    const file = Uint8Array.from('club,carry [m],side [m]\n52\xB0,90,1\n', (c) => c.charCodeAt(0));
    const { rows, faults } = read(file);
    expect(brief(rows)).toEqual(['52° 90.0 1.0']);
    expect(codes(faults)).toEqual(['encoding']);
  });

  it('refuses bytes that are not text', () => {
    expect(codes(read(new Uint8Array([80, 75, 3, 4, 0, 0, 0, 0, 1, 2, 3, 0])).faults)).toEqual(['not-text']);
  });
});

describe('the shape of a table', () => {
  it.each([
    ['semicolons and decimal commas', 'Club;Carry (m);Side (m)\r\n7i;140,5;-3,1\r\n7i;138,0;4,0\r\n'],
    ['tabs', PLAIN.replaceAll(',', '\t')],
    ['pipes', PLAIN.replaceAll(',', ' | ')],
    ['mixed line ends', 'club,carry [m],side [m]\r7i,140.5,-3.1\r\n7i,138,4\n'],
    ['quotes and decimal commas', 'club,carry [m],side [m]\n"7i","140,5","-3,1"\n"7i","138,0","4,0"\n'],
    ['another order and case', 'SIDE_M,Player,CARRY_M,Club\n-3.1,A,140.5,7i\n4,A,138,7i\n'],
    ['titles above the headings', `Range session\nA player,,\n\n${PLAIN}`],
    ['a units row', 'club,carry,side\n,[m],[m]\n7i,140.5,-3.1\n7i,138,4\n'],
    ['hard spaces and typographic minus signs', 'club,carry [m],side [m]\n7i,140.5\u00A0,\u22123.1\n7i,\u00A0138,4\n'],
    ['units in cells', 'club,carry,side\n7i,140.5 m,3.1m L\n7i,138m,4 m R\n'],
  ])('%s', (_, text) => {
    const { rows, faults } = read(text);
    expect(brief(rows)).toEqual(GOOD);
    expect(faults.filter((f) => f.level !== 'note')).toEqual([]);
  });

  it('takes units from headings, then from --units, and says when it had to', () => {
    expect(brief(read('club,carry (yds),side\n7i,150,10\n').rows)).toEqual(['7i 137.2 9.1']);
    const plain = read('club,carry,side\n7i,150,10\n', YARDS);
    expect(brief(plain.rows)).toEqual(['7i 137.2 9.1']);
    expect(codes(plain.faults)).toEqual(['units']);
    expect(brief(read('club,carry,side\n7i,150,10\n', METRES).rows)).toEqual(['7i 150.0 10.0']);
    expect(brief(read('club,carry [m],side [ft]\n7i,150,10\n').rows)).toEqual(['7i 150.0 3.0']);
  });

  it('reads sides however they are written', () => {
    const sides = ['4 L', '4R', 'L4', '-4', '+4', '\u22124', '4 left', 'Right 4', '0'];
    const { rows, faults } = read(`club,carry [m],side [m]\n${sides.map((s) => `7i,100,${s}`).join('\n')}\n`);
    expect(rows.map((r) => r.sideM)).toEqual([-4, 4, -4, -4, 4, -4, -4, 4, 0]);
    expect(faults).toEqual([]);
  });

  it('reads quoted thousands', () => {
    const { rows } = read('club,carry [m],spin,ball speed (mph)\n7i,140.5,"7,250",118\n');
    expect(rows[0]?.readings.spin).toBe(7250);
    expect(rows[0]?.readings['ball speed']).toBeCloseTo(118 * 0.44704, 9);
  });

  it('carries a block\u2019s club down, and a heading again, from its first row', () => {
    const text =
      'club,carry [m],side [m]\n7i,140.5,-3.1\n,138,4\nclub,carry [m],side [m]\nPW,100,1\n,101,2\n9 iron,,\n,120,0\n';
    const { rows, faults } = read(text);
    expect(brief(rows)).toEqual([...GOOD, 'PW 100.0 1.0', 'PW 101.0 2.0', '9 iron 120.0 0.0']);
    expect(codes(faults)).toEqual(['heading-again 4']);
  });

  it('takes carry for the straight line, unless it is mapped as down the line', () => {
    const text = 'Club,Flight (m),Side (m)\n7i,120,50\n';
    const { rows } = read(text, { units: 'm', map: new Map([['flight', 'down the line']]) });
    expect(rows[0]?.carryM).toBeCloseTo(130, 9);
    expect(read(text, { units: 'm', map: new Map([['flight', 'carry']]) }).rows[0]?.carryM).toBe(120);
  });
});

describe('rows that are not shots', () => {
  const SHOTS = 'club,carry [m],side [m]\n7i,140.5,-3.1\n7i,138.2,4.4\n7i,131.3,2.0\n7i,141.9,-1.2\n';
  it.each([
    ['an average by its word', 'Average,138.0,0.5\n'],
    ['a deviation beside the club', '7i Std Dev,4.1,2.9\n'],
    ['extremes', 'Max,141.9,4.4\nMin,131.3,-3.1\n'],
    ['an average without a word', '7i,137.975,0.525\n'],
    ['a rounded average without a club', ',138.0,0.5\n'],
    ['averages, then deviations, without words', ',138.0,0.5\n,4.1,2.9\n'],
    ['units again', ',m,m\n'],
  ])('leaves out %s', (_, more) => {
    const { rows, faults } = read(SHOTS + more);
    expect(rows).toHaveLength(4);
    expect(faults.every((f) => f.level === 'note')).toBe(true);
    expect(faults).toHaveLength(more.split('\n').length - 1);
  });

  it('keeps a shot that happens to be near the average', () => {
    expect(read(`${SHOTS}7i,138.0,0.9\n`).rows).toHaveLength(5);
    expect(read('club,carry [m]\n7i,140\n7i,142\n7i,141\n7i,141\n').rows).toHaveLength(4);
    expect(read('club,carry [m],side [m]\n7i,140,-2\n7i,142,2\n7i,144,0\n7i,142,0\n').rows).toHaveLength(4);
  });

  it('keeps topped and wild shots, and says that they are unusual', () => {
    const { rows, faults } = read('club,carry [m],side [m],launch\n7i,3,4,-9\n7i,0,0,1\n7i,390,1,12\n');
    expect(rows).toHaveLength(3);
    expect(codes(faults)).toEqual(['unusual 2', 'unusual 2', 'unusual 4']);
  });
});

describe('what cannot be read', () => {
  it.each<[string, string, string]>([
    ['a carry that is not a number', '7i,abc,1\n', 'carry 4:2'],
    ['a carry in the other decimal mark', '7i,"140,55",1\n', 'carry 4:2'],
    ['no carry', '7i,n/a,1\n', 'no-carry 4:2'],
    ['a negative carry', '7i,-140,1\n', 'carry-range 4:2'],
    ['a carry from another world', '7i,9000,1\n', 'carry-range 4:2'],
    ['more cells than headings', '7i,1,250,3\n', 'cells 4'],
    ['a quote that is never closed', '7i,"140,1\n', 'quote 4'],
    ['a cell', '7i,140,left of the flag\n', 'cell 4:3'],
  ])('reports %s, and keeps the good rows', (_, row, code) => {
    const { rows, faults } = read(`${PLAIN}${row}7i,139.0,1.0\n`);
    expect(codes(faults)).toEqual([code]);
    expect(brief(rows).slice(0, 2)).toEqual(GOOD);
    expect(brief(rows).at(-1)).toBe('7i 139.0 1.0');
  });

  it('reports shots before any club', () => {
    const { rows, faults } = read('club,carry [m],side [m]\n,140,1\n7i,139,1\n');
    expect(brief(rows)).toEqual(['7i 139.0 1.0']);
    expect(codes(faults)).toEqual(['no-club 2']);
  });

  it('invents no carry from flight', () => {
    const text = 'club,ball speed,launch,spin\n7i,118,16,6500\n';
    expect(codes(read(text).faults)).toEqual(['carry-from-flight 1']);
    const some = read('club,carry [m],ball speed (mph),launch,spin\n7i,,118,16,6500\n7i,140,118,16,6500\n7i,0,0,0,0\n');
    expect(some.rows).toHaveLength(1);
    expect(codes(some.faults)).toEqual(['carry-from-flight 2:2', 'no-reading 4:2', 'no-side']);
  });

  it('offers unknown headings for mapping', () => {
    const { rows, faults } = read('club,carry [m],Wobble\n7i,140,3\n');
    expect(rows).toHaveLength(1);
    expect(codes(faults)).toEqual(['unknown-heading 1:3', 'no-side']);
    expect(faults[0]?.done).toContain('--map "Wobble=COLUMN"');
    const mapped = read('club,carry [m],Wobble\n7i,140,3\n', { units: 'm', map: new Map([['wobble', 'side']]) });
    expect(brief(mapped.rows)).toEqual(['7i 140.0 3.0']);
  });

  it.each([
    ['nothing', '', 'empty'],
    ['no headings', '7i,140,3\n7i,141,2\n', 'no-headings 1'],
    ['no club', 'carry,side\n140,3\n', 'no-club-column 1'],
    ['no carry', 'club,side,total\n7i,3,150\n', 'no-carry-column 1'],
    ['no shots', 'club,carry [m],side\n', 'no-shots'],
    ['too many rows', `club,carry\n${'7i,140\n'.repeat(20_001)}`, 'too-large 20001'],
    ['too many cells', `club,carry\n${','.repeat(300)}\n`, 'too-large 2'],
    ['a cell without end', `club,carry\n7i,${'1'.repeat(3000)}\n`, 'too-large 2'],
  ])('refuses a file with %s', (_, text, code) => {
    const { value, faults } = readShots(text, 'shots.csv', METRES);
    expect(value).toBeUndefined();
    expect(codes(faults.filter((f) => f.level === 'refused'))).toEqual([code]);
  });

  it('refuses too many bytes before it looks at them', () => {
    expect(codes(read(new Uint8Array(32e6 + 1)).faults)).toEqual(['too-large']);
  });

  it('says that a slope is corrected for, and a wind without its bearing is not', () => {
    const { rows, faults } = read('club,carry [m],side [m],wind speed (m/s),slope\n7i,140,1,4,-2\n');
    expect(rows).toHaveLength(1);
    expect(codes(faults)).toEqual(['moved-to-reference-day', 'wind-without-bearing']);
  });
});

describe('signs', () => {
  const table = (sign: number): string => {
    const rows = Array.from({ length: 12 }, (_, i) => `7i,140,${sign * (i - 5)},${(i - 5) / 2}`);
    return `club,carry [m],side [m],launch direction\n${rows.join('\n')}\n`;
  };
  it('are doubted when balls that start right finish left', () => {
    expect(codes(read(table(1)).faults)).toEqual([]);
    expect(codes(read(table(-1)).faults)).toEqual(['signs']);
  });
});

describe('sessions', () => {
  const session = (date: string): string => [140, 138, 144, 120, 131].map((c, i) => `7i,${c},${i},${date}`).join('\n');

  it('counts a session that is there twice once', () => {
    const text = `club,carry [m],side [m],date\n${session('1 May')}\n${session('2 May')}\n`;
    const kept = withoutRepeatedSessions(read(text).rows);
    expect(kept.rows).toHaveLength(5);
    expect(codes(kept.faults)).toEqual(['session-twice 7']);
  });

  it('keeps different sessions, and equal shots within one', () => {
    const text = `club,carry [m],side [m],date\n${session('1 May')}\n${session('2 May').replace('144', '145')}\n`;
    expect(withoutRepeatedSessions(read(text).rows).rows).toHaveLength(10);
    const same = read(`club,carry [m]\n${'7i,140\n'.repeat(8)}`);
    expect(withoutRepeatedSessions(same.rows).rows).toHaveLength(8);
  });
});

it('gives the table behind the shots: headings and rows as they stand, also before a column is mapped', () => {
  const text = 'Stick,Flug (m),Weite,Dev\n7-iron,131.4,2,2.5 L\n\n7-iron,129,2,=1\n';
  const kinds = (map: ReadonlyMap<string, 'club' | 'side'>) =>
    shotTable(text, 'odd.csv', { units: 'm', map }).value?.headings.map((h) => [h.text, h.meaning.kind]);
  const unknown = ['Flug (m)', 'Weite'].map((heading) => [heading, 'unknown']);
  expect(kinds(new Map())).toEqual([['Stick', 'unknown'], ...unknown, ['Dev', 'unknown']]);
  const map = new Map([
    ['stick', 'club'],
    ['dev', 'side'],
  ] as const);
  expect(kinds(map)).toEqual([['Stick', 'column'], ...unknown, ['Dev', 'column']]);
  expect(shotTable(text, 'odd.csv', { units: 'm' }).value?.cells.get(4)).toEqual(['7-iron', '129', '2', '=1']);
});
