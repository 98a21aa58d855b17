import { ledgerSchema } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { main } from './main.ts';

const folder = mkdtempSync(join(tmpdir(), 'leeway-ledger-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Hole 3 from a paper card: a 6-iron short and right, a pitch, two putts. */
const SHOTS = [
  {
    club: '6 iron',
    aim: { beyondFlagM: 0, rightOfFlagM: 0 },
    finish: { beyondFlagM: -22, rightOfFlagM: 12 },
    lie: 'tee',
  },
  { club: '58°', swing: 'full', finish: { beyondFlagPaces: -3, rightOfFlagPaces: 0 } },
  { lie: 'green', finish: { beyondFlagM: 0, rightOfFlagM: 0.5 } },
  { finish: 'holed' },
];

async function run(document: unknown, ...more: readonly string[]) {
  const path = join(folder, 'round.json');
  writeFileSync(path, JSON.stringify(document));
  let [out, err] = ['', ''];
  const args = ['ledger', '--ground', DEMO.ground, '--player', DEMO.player, path, ...more];
  const code = await main(args, { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

const round = { version: 1, date: '2026-05-14', holes: [{ hole: '3', shots: SHOTS }] };

describe('leeway ledger', () => {
  const whole = run(round, '--json', '--baseline', 'tour');

  test('gives one document of its schema whose parts add up to the score', async () => {
    const { code, out } = await whole;
    expect(code).toBe(0);
    const { rounds, shots, habits, unmeasured, baselineIndex } = ledgerSchema.parse(JSON.parse(out));
    const [first] = rounds;
    const parts = first!.choice + first!.execution + first!.shortGame + first!.putting + first!.untold;
    expect(first!.score).toBe(4);
    expect(first!.expected + parts).toBeCloseTo(4, 9);
    expect(first!.gained.baseline - first!.gained.total).toBeCloseTo(4, 9);
    expect(baselineIndex).toBe(-5.5);
    expect(shots.map((s) => s.part)).toEqual(['long shot', 'short game', 'putt', 'putt']);
    expect(shots[0]!.choice).toBeDefined();
    expect(habits.map((h) => h.habit).toSorted()).toEqual([
      'direction',
      'length',
      'number',
      'penalty',
      'risk',
      'spot',
      'strike',
      'swing',
    ]);
    expect(habits.find((h) => h.habit === 'strike')!.against).toBe('usual of index 14');
    expect(unmeasured).toEqual(['shortGame', 'putting']);
    expect(first!.counts).toEqual({ fairways: [0, 0], greens: [0, 1], upAndDown: [0, 1], putts: 2, penalties: 0 });
    expect(first!.predicted.lo80).toBeLessThan(first!.predicted.hi80);
    expect(first!.predicted.mean).toBeCloseTo(first!.expected, 0);
    expect(shots[0]!.aimNoted).toBe(true);
  });

  test('strokes in one list, each with its hole, are the same round', async () => {
    const listed = { version: 1, date: '2026-05-14', shots: SHOTS.map((s) => ({ hole: '3', ...s })) };
    expect((await run(listed, '--json', '--baseline', 'tour')).out).toBe((await whole).out);
  });

  test('tells in words what choosing cost, and what the balls did apart from it', async () => {
    const { out } = await run(round);
    expect(out).toMatch(/^Odile Varga: one round, 1 hole\.\n {2}2026-05-14: 4 on 1 hole;/);
    expect(out).toContain('To be saved by choosing better:');
    expect(out).toContain('Against the usual of this player’s own patterns');
    expect(out).toMatch(/Habits of execution, against the usual of index 14/);
    expect(out).toContain('Never measured, so nothing to compare: the short game; putting.');
    expect(out).toMatch(/Of 1 long shot[^\n]* the patterns predict \d+\./);
    expect(out).toContain('Gained on a player of index 14');
    expect(out).not.toMatch(/NaN|undefined/);
  });

  test.each([
    ['no such hole', { ...round, holes: [{ hole: '19', shots: SHOTS }] }, /hole 19.*one of 1, 2/],
    [
      'a stroke after the last',
      { ...round, holes: [{ hole: '3', shots: [...SHOTS, ...SHOTS] }] },
      /hole 3, shot 5.*after the ball was holed/,
    ],
    ['an open end', { ...round, holes: [{ hole: '3', shots: SHOTS.slice(0, 2) }] }, /hole 3, shot 2.*not holed/],
    ['no strokes', { version: 1 }, /no strokes/],
    ['another shape', { ...round, players: 2 }, /players/],
  ])('%s is refused in one line', async (_, document, line) => {
    const { code, out, err } = await run(document);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(
      err
        .trim()
        .split('\n')
        .filter((l) => line.test(l)),
    ).toHaveLength(1);
  });

  test('a baseline that no table holds is wrong usage', async () => {
    expect(await run(round, '--baseline', '45')).toMatchObject({ code: 2, out: '' });
  });
});
