import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEMO } from '@leeway/demo';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { main } from './main.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'leeway-check-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function check(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(['check', ...args], { out: (t) => void (out += t), err: (t) => void (err += t) });
  return { code, out, err };
}

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

test('sound files are told apart by what is in them and summed up', async () => {
  const { code, out, err } = await check(DEMO.ground, DEMO.player, DEMO.shots);
  expect(code).toBe(0);
  expect(err).toMatch(/^\S+tolvane\.geojson: links\/range: found a driving range; .*\n$/);
  expect(out.split('\n')).toEqual([
    `${DEMO.ground}: ground file; Tolvane Links, 18 holes, 307 features; 1 noticed`,
    expect.stringMatching(/: player file; Odile Varga, 12 clubs, \d+ patterns; no faults$/),
    expect.stringMatching(/: shot file; \d+ balls; no faults$/),
    '',
  ]);
});

test.each([
  ['nothing', '', 'expected'],
  ['XML that is no map', '<html></html>', 'expected'],
  ['XML with entities', '<!DOCTYPE x [<!ENTITY a "b">]><osm>&a;</osm>', 'expected'],
  ['broken JSON', '{"version": 1, "name"', 'expected JSON'],
  ['JSON of no known kind', '[1, 2]', 'JSON of no known kind'],
  ['a round', '{"version": 1, "holes": []}', 'a round file, which cannot be checked yet'],
  ['a player with an unknown key', '{"version": 1, "name": "A", "clubs": [], "shoes": 2}', 'the key "shoes"'],
  ['nesting without end', '['.repeat(100_000), 'brackets within brackets'],
])('%s is refused in single lines, exit code 1', async (what, text, said) => {
  const path = await file(`${what}.x`, text);
  const { code, out, err } = await check(path);
  expect(code).toBe(1);
  expect(out).toMatch(/: refused(?:, as an? \w+ file)?\n$/);
  expect(err).toContain(said);
  for (const line of err.trimEnd().split('\n')) expect(line).toMatch(/: found .+; expected .+ \[[a-z0-9-]+\]$/);
  expect(err).not.toContain('    at ');
});

test('a table of shots in UTF-16 is a shot file', async () => {
  const path = join(folder, 'utf16.csv');
  await writeFile(path, Buffer.from('\uFEFFclub,carry\n7-iron,150\n', 'utf16le'));
  expect((await check(path)).out).toContain('shot file; 1 ball');
});

test('one refused file among sound ones is exit code 1, and the others are still told', async () => {
  const { code, out } = await check(DEMO.player, join(folder, 'missing.csv'));
  expect(code).toBe(1);
  expect(out).toContain('player file');
  expect(out).toContain('missing.csv: refused\n');
});

test('--json gives one document with every fault', async () => {
  const path = await file('round.json', '{"holes": []}');
  const { code, out } = await check(path, DEMO.player, '--json');
  expect(code).toBe(1);
  expect(JSON.parse(out)).toMatchObject({
    version: 1,
    files: [
      { file: path, kind: 'round', faults: [{ code: 'unknown-kind', level: 'refused', file: path }] },
      { file: DEMO.player, kind: 'player', faults: [] },
    ],
  });
});
