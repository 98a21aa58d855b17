import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CarriesDocument } from '@leeway/contract';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import { filesHolding, newMemoryFolder, prepareFolder, removeFolder } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { main } from './main.ts';

const folder = newMemoryFolder();
const data = join(folder, 'data');
const at = ['--data', data] as const;
const [demo] = DEMO_PLAYERS;
const NAME = 'Odile Varga';

beforeAll(() => prepareFolder(data));
afterAll(() => removeFolder(folder));

interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command as someone would who types these answers, one a question. */
async function typing(answers: readonly string[], ...args: readonly string[]): Promise<Run> {
  let [out, err] = ['', ''];
  const left = [...answers];
  const ask = (question: string): Promise<string> => {
    err += question;
    return Promise.resolve(left.shift() ?? '');
  };
  const io = { out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const code = await main(args, answers.length > 0 ? { ...io, ask } : io);
  return { code, out, err };
}

const run = (...args: readonly string[]): Promise<Run> => typing([], ...args);

test(
  'files are kept after they were shown and approved, and give the same plans from the store as from files',
  { timeout: 120_000 },
  async () => {
    const [ground, player, shots] = [DEMO.ground, demo?.player ?? '', demo?.shots ?? ''];
    expect(await run('keep', ground, ...at)).toMatchObject({ code: 2, err: expect.stringContaining('--yes') });
    expect(await typing(['no'], 'keep', ground, ...at)).toMatchObject({
      code: 0,
      out: '',
      err: expect.stringContaining('not kept'),
    });
    expect(await typing(['y', 'yes'], 'keep', ground, player, ...at)).toMatchObject({
      code: 0,
      out: `${ground}: Tolvane Links is kept\n${player}: the player is kept\n`,
    });
    const kept = await run('keep', shots, ...at, '--player', NAME, '--date', '2026-05-14', '--yes');
    expect(kept).toMatchObject({ code: 0, out: expect.stringMatching(/: 376 balls kept\n$/) });
    expect((await run('keep', shots, ...at, '--player', NAME, '--date', '2026-05-14', '--yes')).out).toMatch(
      /kept already/,
    );
    expect((await run('players', ...at)).out).toMatch(/^Odile Varga, 14: shot of \d{4}-\d\d-\d\d\n$/);

    const bare = join(folder, 'bare.json');
    const { patterns: _, ...known } = JSON.parse(readFileSync(player, 'utf8')) as { patterns: unknown };
    writeFileSync(bare, JSON.stringify(known));
    const [fromFile, fromStore] = [
      await run('carries', shots, '--player', bare, '--json'),
      await run('carries', ...at, '--player', NAME, '--json'),
    ];
    const entries = ({ out }: Run) => (JSON.parse(out) as CarriesDocument).entries;
    const told = (of: Run): unknown => entries(of).map(({ club, swing, n }) => [club, swing, n]);
    expect(told(fromStore)).toEqual(told(fromFile));
    // the store knows the day of the session, the file does not: a day's own effect on all its carries is told from theirs
    for (const [i, { carryM, sideM, mishitShare }] of entries(fromStore).entries()) {
      const other = entries(fromFile)[i]!;
      expect(Math.abs(carryM.mean - other.carryM.mean)).toBeLessThan(0.05);
      expect(Math.abs(sideM.mean - other.sideM.mean)).toBeLessThan(0.05);
      expect(Math.abs(mishitShare.mean - other.mishitShare.mean)).toBeLessThan(0.001);
    }

    const plan = async (...from: readonly string[]): Promise<string> =>
      (await run('plan', '--hole', '3', '--json', ...from)).out;
    expect(await plan(...at, '--ground', 'tolvane links', '--player', NAME)).toBe(
      await plan('--ground', ground, '--player', player),
    );
    const nobody = await run('plan', ...at, '--ground', 'Tolvane Links', '--player', 'Nobody', '--hole', '3');
    expect(nobody).toMatchObject({
      code: 1,
      err: expect.stringContaining('expected one of Odile Varga [no-such-player]'),
    });
  },
);

test(
  'a backup is restored, a record goes out and in, and an erased player is gone from every byte',
  { timeout: 120_000 },
  async () => {
    const stick = join(folder, 'stick');
    const backup = join(stick, 'friday.backup');
    expect(await run('backup', backup, ...at)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/: \d+ records\n$/),
    });
    const record = join(folder, 'odile-record.json');
    expect((await run('export', ...at, '--player', NAME, '--out', record)).code).toBe(0);
    expect((await run('restore', backup, ...at)).code).toBe(1);

    expect((await run('erase', ...at, '--player', NAME)).code).toBe(2);
    expect((await typing(['Odile'], 'erase', ...at, '--player', NAME)).code).toBe(1);
    expect((await run('players', ...at)).out).toContain(NAME);
    expect((await typing([NAME], 'erase', ...at, '--player', NAME)).out).toMatch(/^379 records and 0 jobs erased\n$/);
    expect((await run('players', ...at)).out).toBe('');
    expect(filesHolding(data, NAME)).toEqual([]);
    expect(filesHolding(stick, NAME)).toEqual([]);
    expect(await run('keep', record, ...at, '--yes')).toMatchObject({
      code: 1,
      err: expect.stringContaining('[erased]'),
    });

    const other = join(folder, 'other');
    await prepareFolder(other);
    expect(await run('restore', backup, '--data', other)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/; 379 of players erased since are left out\n$/),
    });
    const third = join(folder, 'third');
    await prepareFolder(third);
    expect((await run('keep', record, '--data', third, '--yes')).out).toMatch(/379 records kept/);
    expect((await run('players', '--data', third)).out).toContain(NAME);
  },
);

test('a store that another has open is refused in one line', async () => {
  const { openStore } = await import('@leeway/store');
  const { value } = await openStore({ folder: data });
  const { code, err } = await run('players', ...at);
  expect([code, err.split('\n').length]).toEqual([1, 2]);
  expect(err).toContain('[in-use]');
  await value?.close();
  expect(existsSync(data) && readdirSync(data)).toContain('keys');
});
