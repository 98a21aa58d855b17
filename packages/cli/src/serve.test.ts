import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { main } from './main.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'leeway-serve-'));
  await writeFile(join(folder, 'kim.json'), '{"version": 1, "name": "Kim", "clubs": [{}]}');
  await writeFile(join(folder, 'course.geojson'), '{"type": "FeatureCollection", "features": []}');
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function serve(...args: readonly string[]): Promise<{ code: number; err: string }> {
  let err = '';
  const io = { out: () => undefined, err: (text: string) => void (err += text) };
  return { code: await main(['serve', '--port=0', ...args], io), err };
}

test('files that cannot be read are refused, a line each, before anything is served', async () => {
  const [player, ground] = [join(folder, 'kim.json'), join(folder, 'course.geojson')];
  const { code, err } = await serve('--player', player, '--ground', ground);
  expect(code).toBe(1);
  const lines = err.trimEnd().split('\n');
  expect(lines).toHaveLength(2);
  expect(lines[0]).toMatch(/course\.geojson: found .*; expected .* \[no-holes\]$/);
  expect(lines[1]).toMatch(/kim\.json: clubs\[0\].* expected /);
});

test('a file that is not there is refused', async () => {
  const { code, err } = await serve('--ground', join(folder, 'nothing.osm'));
  expect({ code, lines: err.trimEnd().split('\n') }).toEqual({
    code: 1,
    lines: [expect.stringContaining('nothing.osm: found no such file or folder')],
  });
});

test('another address than this machine’s own is refused without passphrase, TLS and a name', async () => {
  const bare = await serve('--bind', '0.0.0.0');
  expect([bare.code, bare.err.match(/\[(?:passphrase|tls|host)\]$/gm)]).toEqual([
    1,
    ['[passphrase]', '[tls]', '[host]'],
  ]);
  expect((await serve('--tls-cert', 'cert.pem')).code).toBe(2);
});
