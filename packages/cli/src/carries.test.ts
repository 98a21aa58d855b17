import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CarriesDocument, carriesSchema, readPlayer } from '@leeway/contract';
import { playerModel, randomFrom } from '@leeway/engine';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import { carries } from './carries.ts';
import { Usage } from './command.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'carries-'));
});
afterAll(() => rm(folder, { recursive: true }));

const TRUTH_YD = { Driver: 220, '5i': 165, '7i': 145, '9i': 124, PW: 112 };

function shotsOf(each: number, seed = 3): string {
  const random = randomFrom(seed);
  const rows = Object.entries(TRUTH_YD).flatMap(([club, carry]) =>
    Array.from({ length: each }, () => {
      const missed = random.next() < 0.15;
      const yards = missed ? carry * random.beta(3.2, 2) : carry * (1 + 0.06 * random.normal());
      return `${club},${yards.toFixed(1)},${(yards * 0.07 * random.normal()).toFixed(1)}`;
    }),
  );
  return `Club,Carry (yd),Side (yd)\n${rows.join('\n')}\n`;
}

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const io = { out: (t: string) => void (out += t), err: (t: string) => void (err += t) };
  const code = await carries.run(parseArguments(args, { ...carries.options, ...COMMON_OPTIONS }), io);
  return { code, out, err };
}

/** Every document is checked against the published schema. */
const parsed = (text: string): CarriesDocument => carriesSchema.parse(JSON.parse(text));

describe('leeway carries', () => {
  it('tables every club from shots alone, with the count of its balls', async () => {
    const { code, out, err } = await run(await file('a.csv', shotsOf(12)), '--handicap', '14', '--json');
    const { version, entries, gaps, faults } = parsed(out);
    expect([code, err, version, faults]).toEqual([0, '', 1, []]);
    expect(entries.map((e) => [e.club, e.n])).toEqual(Object.keys(TRUTH_YD).map((club) => [club, 12]));
    for (const e of entries) {
      const truthM = TRUTH_YD[e.club as keyof typeof TRUTH_YD] * 0.9144;
      expect(Math.abs(e.carryM.mean - truthM)).toBeLessThan(3 * e.carryM.se);
    }
    expect(gaps.length).toBeGreaterThan(0);
  });

  it('gives the same bytes twice', async () => {
    const shots = await file('b.csv', shotsOf(8));
    expect(await run(shots, '--json')).toEqual(await run(shots, '--json'));
  });

  it('prints a ladder in yards, or in metres', async () => {
    const shots = await file('c.csv', shotsOf(10));
    const yards = await run(shots, '--handicap', '14');
    expect(yards.out).toMatch(/^Carries of Player, yards \(handicap 14\)\n/);
    expect(yards.out).toMatch(/^7i +14\d ±\d/m);
    expect(yards.out).toMatch(/^ {2}\d+ yards between/m);
    const metres = await run(shots, '--handicap', '14', '--units', 'm');
    expect(metres.out).toMatch(/^7i +13\d ±\d/m);
  });

  it('writes a Player file that plays the same clubs, and nothing over an old one unasked', async () => {
    const shots = await file('d.csv', shotsOf(15));
    const path = join(folder, 'new', 'kim.json');
    expect((await run(shots, '--handicap', '9', '--name', 'Kim', '--patterns', path)).code).toBe(0);
    const written = await readFile(path, 'utf8');
    const { value, faults } = readPlayer(written, path);
    expect(faults).toEqual([]);
    expect(value).toMatchObject({ name: 'Kim', handicapIndex: 9, onCourse: { distanceSdPct: expect.any(Number) } });
    const model = value === undefined ? undefined : playerModel(value);
    expect(model?.options.filter((o) => o.evidence === 'fitted').map((o) => o.club)).toEqual(Object.keys(TRUTH_YD));
    const again = await run(shots, '--patterns', path);
    expect([again.code, again.out]).toEqual([1, '']);
    expect(again.err).toContain('already-there');
    expect(await readFile(path, 'utf8')).toBe(written);
    expect((await run(shots, '--patterns', path, '--force')).code).toBe(0);
    expect(await readdir(join(folder, 'new'))).toEqual(['kim.json']);
  });

  it('spells clubs as the Player file does, shows its claims, and believes the clubs without balls', async () => {
    const clubs = [
      { name: 'Seven', claimedCarryM: 140 },
      { name: '7 IRON', claimedCarryM: 150 },
      { name: 'Wood 3' },
      { name: 'Putter' },
    ];
    const player = await file('p.json', JSON.stringify({ version: 1, name: 'Kim', handicapIndex: 12, clubs }));
    const shots = await file('e.csv', 'club,carry [m],side [m]\n7i,140,1\n7-iron,142,-3\nPutter,5,0\n');
    const { code, out, err } = await run(shots, '--player', player, '--json');
    const { entries } = parsed(out);
    expect(code).toBe(0);
    expect(new Set(entries.map((e) => [e.club, e.n, e.claimedM]))).toEqual(
      new Set([
        ['7 IRON', 2, 150],
        ['Seven', 0, 140],
        ['Wood 3', 0, undefined],
      ]),
    );
    expect(entries.find((e) => e.club === 'Seven')?.carryM.mean).toBe(140);
    expect(err).toContain('[putts]');
  });

  it('draws the ladder, as SVG or PDF, and nothing over an old drawing unasked', async () => {
    const shots = await file('q.csv', shotsOf(8));
    const drawing = join(folder, 'ladder.svg');
    expect((await run(shots, '--handicap', '14', '--name', 'Kim', '--out', drawing)).code).toBe(0);
    const text = await readFile(drawing, 'utf8');
    expect(text).toContain('<title>The ladder of carries of Kim</title>');
    expect(text).toMatch(/<desc>Carries in yards: Driver 2\d\d, /);
    expect((await run(shots, '--out', drawing)).err).toContain('already-there');
    const print = join(folder, 'ladder.pdf');
    expect((await run(shots, '--out', print)).code).toBe(0);
    expect((await readFile(print, 'latin1')).slice(0, 5)).toBe('%PDF-');
    await expect(run(shots, '--out', 'ladder.png')).rejects.toThrow(Usage);
    await expect(run(shots, '--light', 'sun')).rejects.toThrow(Usage);
  });

  it('goes on past bad rows, and tells each in one line', async () => {
    const shots = await file('f.csv', `${shotsOf(6)}7i,abc,3\nAverage,150,0\n`);
    const { code, err, out } = await run(shots, '--handicap', '10', '--json');
    expect(code).toBe(0);
    expect(err.trim().split('\n')).toHaveLength(2);
    expect(err).toContain(
      'line 32, column 2: found carry "abc"; expected a number with a decimal point; the row is left out [carry]',
    );
    expect(parsed(out).faults.map((f) => f.code)).toEqual(['carry', 'summary-row']);
  });

  it('maps headings that it does not know', async () => {
    const shots = await file('g.csv', 'What,Flug (m)\n7i,140\n7i,143\n');
    expect((await run(shots)).code).toBe(1);
    const { code, out } = await run(shots, '--map', 'What=club', '--map', 'Flug=carry', '--json');
    expect([code, parsed(out).entries[0]?.n]).toEqual([0, 2]);
  });

  it('names a club whose balls do not belong there, and compares what is claimed', async () => {
    const clubs = [{ name: '7i', claimedCarryM: 150 }, { name: 'PW' }];
    const player = await file('r.json', JSON.stringify({ version: 1, name: 'Kim', handicapIndex: 14, clubs }));
    const shots = await file(
      'r.csv',
      shotsOf(12).replaceAll('PW,', 'X,').replaceAll('5i,', 'PW,').replaceAll('X,', '5i,'),
    );
    const { code, out, err } = await run(shots, '--player', player);
    expect(code).toBe(0);
    expect(err).toMatch(
      /: 5i: found a 5i that carries 1\d\d yd; expected 1\d\d ±\d+, by the other clubs; .* \[club-out-of-place\]/,
    );
    expect(out).toMatch(/^ {2}7i: says 164, carries 1\d\d to 1\d\d, most likely 1[45]\d: too long$/m);
  });

  it('joins range balls of old days with own balls of now, and tells what it learnt of both', async () => {
    const dated = (text: string, ball: string, date: string, times: number): string =>
      text
        .trim()
        .split('\n')
        .slice(1)
        .map((row) => row.replace(/,([\d.]+),/, (_, c) => `,${(Number(c) * times).toFixed(1)},`) + `,${ball},${date}`)
        .join('\n');
    const rows = `${dated(shotsOf(12), 'range', '2025-06-01', 0.9)}\n${dated(shotsOf(12, 5), 'own', '2026-05-20', 1)}\n`;
    const shots = await file('s.csv', `Club,Carry (yd),Side (yd),Ball,Date\n${rows}`);
    const { rangeBallFactor, days, entries } = parsed((await run(shots, '--handicap', '14', '--json')).out);
    expect(rangeBallFactor?.mean).toBeLessThan(0.97);
    expect(days?.map((d) => [d.ageDays, d.rangeBall, d.balls])).toEqual([
      [353, true, 60],
      [0, false, 60],
    ]);
    expect(Math.abs((entries.find((e) => e.club === '7i')?.carryM.mean ?? 0) - 145 * 0.9144)).toBeLessThan(6);
    const { out } = await run(shots, '--handicap', '14');
    expect(out).toMatch(/^Days and balls\n {2}range balls go 9\d % of the own ball, \d\d % to \d\d+ % at 8 in 10/m);
  });

  it('takes in pitch marks, and misses where every approach is there', async () => {
    const shots = await file('t.csv', shotsOf(8));
    const random = randomFrom(6);
    const rows = Array.from({ length: 40 }, () => {
      const [past, right] = [random.next() < 0.15 ? -40 : 10 * random.normal() - 5, 7 * random.normal()];
      const missed = past < -13 ? 'short' : past > 13 ? 'long' : right < -12 ? 'left' : right > 12 ? 'right' : '';
      const mark = missed === '' ? `${past.toFixed(0)},${right.toFixed(0)}` : ',';
      return `7i,150,${mark},137,163,24,${missed},2026-05-01`;
    });
    const head = 'club,to flag (yd),past (paces),right (paces),front,back,width,missed,date';
    const rounds = await file('rounds.csv', `${head}\n${rows.join('\n')}\n`);
    const some = await run(shots, '--approaches', rounds, '--handicap', '14', '--json');
    expect(some.err).toContain('[some-logged]');
    const all = await run(shots, '--approaches', rounds, '--all-logged', '--handicap', '14', '--json');
    expect([some.code, all.code, all.err]).toEqual([0, 0, '']);
    const seven = (out: string) => parsed(out).entries.find((e) => e.club === '7i')!.carryM;
    expect(Math.abs(seven(all.out).mean - 145 * 0.9144)).toBeLessThan(2.5 * seven(all.out).se);
    expect(seven(all.out).se).toBeLessThan(seven(some.out).se);
    const [apart] = parsed(all.out).apart ?? [];
    expect([apart?.club, apart?.rangeM.n, apart?.courseM.n]).toEqual(['7i', 8, 40]);
    const text = (await run(shots, '--approaches', rounds, '--all-logged', '--handicap', '14')).out;
    expect(text).toMatch(/^ {2}7i: range 1\d\d \(.*, 8 balls\), course 1\d\d \(.*, 40 balls\); the plan uses 1\d\d/m);
    const bad = await file('bad.csv', 'club,carry\n7i,150\n');
    expect((await run(shots, '--approaches', bad)).err).toContain('[approach-columns]');
  });

  it('weighs gaps by the holes of a course, tables wedges by swing, and names clubs that their lofts belie', async () => {
    const wedges = 'PW,half,70,1\nPW,half,71,0';
    const rows = shotsOf(10).trim().split('\n').slice(1);
    const swung = rows.map((row) => row.replace(/^([^,]*),/, '$1,full,')).join('\n');
    const eight = swung.replaceAll('9i,', '6i,');
    const shots = await file('u.csv', `Club,Swing,Carry (yd),Side (yd)\n${swung}\n${wedges}\n${eight}\n`);
    const links = join(import.meta.dirname, '../../demo/ground/tolvane.geojson');
    const { code, out } = await run(shots, '--handicap', '14', '--ground', links);
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Gaps, by strokes a round on the 18 holes of .*\n {2}\d+ yards between \d+ and \d+: asked for/m,
    );
    expect(out).toMatch(/^wedges +full +half\nPW +11\d ±\d+ +\d\d ±\d+$/m);
    expect(out).toMatch(/^ {2}the 7i carries \d+ yards beyond the 6i \(\d+ in 100\)/m);
    expect((await run(shots, '--handicap', '14')).out).toContain('on usual holes');
    const none = await run(shots, '--ground', join(folder, 'nowhere.geojson'));
    expect([none.code, none.out]).toEqual([1, '']);
    expect(none.err).toContain('nowhere.geojson');
  });

  it('counts a session given twice once', async () => {
    const one = await file('h.csv', shotsOf(9));
    const two = await file('i.csv', shotsOf(9));
    const { out, err } = await run(one, two, '--json');
    expect(parsed(out).entries.every((e) => e.n === 9)).toBe(true);
    expect(err).toContain('[session-twice]');
  });

  it('names a session that nearly repeats another, and one in another unit', async () => {
    const one = await file('v.csv', shotsOf(14));
    const rounded = shotsOf(14).replace(
      /(\d+)\.(\d)/g,
      (_, whole, tenth) => `${Number(whole) + (Number(tenth) >= 5 ? 1 : 0)}`,
    );
    expect((await run(one, await file('w.csv', rounded), '--handicap', '14')).err).toContain('[session-nearly-twice]');
    const metres = await file('x.csv', shotsOf(14, 8).replaceAll('(yd)', '(m)'));
    expect((await run(one, metres, '--handicap', '14')).err).toContain('[session-units]');
  });

  it('asks whose shots they are', async () => {
    const shots = await file('j.csv', 'player,club,carry [m],side [m]\nKim,7i,140,1\nLee,7i,150,2\nKim,7i,141,1\n');
    const asked = await run(shots, '--json');
    expect([asked.code, asked.out]).toEqual([1, '']);
    expect(asked.err).toContain('[several-players]');
    const kim = await run(shots, '--name', 'kim', '--json');
    expect(parsed(kim.out).entries[0]?.n).toBe(2);
  });

  it('refuses with one line and writes nothing', async () => {
    const path = join(folder, 'never.json');
    const empty = await file('k.csv', '');
    const { code, out, err } = await run(empty, await file('l.csv', shotsOf(5)), '--patterns', path);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('found nothing in it');
    expect(await readdir(folder)).not.toContain('never.json');
    const stated = await file(
      'm.json',
      JSON.stringify({
        version: 1,
        name: 'x',
        patterns: [
          {
            club: '7i',
            swing: 'full',
            components: [{ weight: 1, alongM: 140, acrossM: 0, sdAlongM: 5, sdAcrossM: 5, corr: 0 }],
          },
        ],
      }),
    );
    expect((await run(await file('n.csv', shotsOf(5)), '--player', stated, '--patterns', path)).err).toContain(
      '[stated-player]',
    );
    expect((await run(join(folder, 'nowhere.csv'))).code).toBe(1);
  });

  it.each([
    ['no file', []],
    ['a handicap that is none', ['x.csv', '--handicap', 'scratch']],
    ['a column that is none', ['x.csv', '--map', 'Flug=carri']],
    ['a map without a column', ['x.csv', '--map', 'Flug']],
    ['units that are none', ['x.csv', '--units', 'miles']],
    ['force without a file', ['x.csv', '--force']],
  ])('is wrong usage with %s', async (_, args) => {
    await expect(run(...args)).rejects.toThrow(Usage);
  });
});
