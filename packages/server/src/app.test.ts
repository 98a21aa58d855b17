import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { receivedHole, type SentBall, shelfSchema } from '@leeway/contract';
import type { HoleGround } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from './app.ts';
import { demoFiles } from './demoFiles.ts';
import { stockShelf } from './shelf.ts';

const host = 'localhost:4310';
let page = '';
let app: FastifyInstance;
beforeAll(async () => {
  page = await mkdtemp(join(tmpdir(), 'leeway-app-'));
  await mkdir(join(page, 'assets'));
  await writeFile(join(page, 'index.html'), '<!doctype html><title>Leeway</title>');
  await writeFile(join(page, 'assets', 'index-abc.js'), 'export const plain = 1;');
  await writeFile(join(page, 'assets', 'index-abc.js.gz'), 'zipped');
  const read = stockShelf(await demoFiles());
  if (read.value === undefined) throw new Error('the demo was refused');
  app = await createApp({ page, stocked: read.value }, () => undefined);
});
afterAll(async () => {
  await app.close();
  await rm(page, { recursive: true, force: true });
});

test('the page may load its own scripts, and nothing written into it or from elsewhere', async () => {
  const sent = await app.inject({ url: '/', headers: { host } });
  expect([sent.statusCode, sent.headers['cache-control']]).toEqual([200, 'no-cache']);
  const policy = String(sent.headers['content-security-policy']);
  expect(policy).toContain("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'");
  expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|\*/);
});

test('a file named by its hash is kept for ever, and sent compressed to those who can read it', async () => {
  const url = '/assets/index-abc.js';
  const plain = await app.inject({ url, headers: { host } });
  expect([plain.body, plain.headers['cache-control']]).toEqual([
    'export const plain = 1;',
    'public, max-age=31536000, immutable',
  ]);
  const zipped = await app.inject({ url, headers: { host, 'accept-encoding': 'gzip' } });
  expect([zipped.body, zipped.headers['content-encoding']]).toEqual(['zipped', 'gzip']);
});

test('the shelf lists the made-up course and players, keeps its schema, and every file on it is sent', async () => {
  const sent = await app.inject({ url: '/api/shelf', headers: { host } });
  const shelf = shelfSchema.parse(sent.json());
  expect(shelf.grounds.map(({ course, holes }) => [course, holes.length])).toEqual([['Tolvane Links', 18]]);
  expect(shelf.players.map(({ name }) => name)).toEqual(['Odile Varga', 'Marek Osterby', 'Wilma Tolland']);
  expect(shelf.opening).toEqual({ ground: shelf.grounds[0]?.id, hole: '7', player: shelf.players[0]?.id });
  const read = readGround((await demoFiles()).grounds[0]?.text ?? '', 'demo').value?.holes ?? [];
  const bare = ({ frame, ...rest }: HoleGround) => ({ ...rest, origin: frame.origin });
  const place = { eastM: 123.4, northM: -56.7 };
  for (const [i, { url }] of (shelf.grounds[0]?.holes ?? []).entries()) {
    const got = receivedHole((await app.inject({ url, headers: { host } })).json());
    expect(bare(got)).toEqual(read[i] && bare(read[i]));
    expect(got.frame.toGeo(place)).toEqual(read[i]?.frame.toGeo(place));
  }
  for (const { name, url, ballUrls } of shelf.players) {
    expect((await app.inject({ url, headers: { host } })).json()).toMatchObject({ name });
    const balls: SentBall[] = (await app.inject({ url: ballUrls[0] ?? '', headers: { host } })).json();
    expect(balls.length).toBeGreaterThan(200);
  }
});

test.each(['/api/files/0123456789abcdef', '/api/files/..%2f..%2fpackage.json', '/../package.json', '/nothing'])(
  'there is nothing at %s',
  async (url) => {
    const sent = await app.inject({ url, headers: { host } });
    expect(sent.statusCode).toBeGreaterThanOrEqual(400);
    expect(sent.statusCode).toBeLessThan(500);
    expect(sent.body).not.toContain('leeway-house');
  },
);

test('without a store, what is kept is refused and the rest is served', async () => {
  const sent = await app.inject({ url: '/api/players', headers: { host } });
  expect([sent.statusCode, sent.json()]).toMatchObject([503, { faults: [{ code: 'no-store' }] }]);
});

test('a file that cannot be played with is refused by its name', async () => {
  const demo = await demoFiles();
  const { value, faults } = stockShelf({ ...demo, grounds: [{ name: 'course.osm', text: 'no map' }, ...demo.grounds] });
  expect(value).toBeUndefined();
  expect(faults.filter((f) => f.level === 'refused').map((f) => f.file)).toEqual(['course.osm']);
});
