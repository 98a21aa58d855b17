import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from './app.ts';
import type { Door } from './door.ts';

/** Every request here is turned away, but for its one sound twin. */

const OPEN = { host: 'localhost:4310' };
const OWN = { ...OPEN, 'x-leeway': '1' };
const ORIGIN = 'http://localhost:4310';

const folder = mkdtempSync(join(tmpdir(), 'leeway-refused-'));
const apps: FastifyInstance[] = [];
beforeAll(() => writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Leeway</title>'));
afterAll(async () => {
  await Promise.all(apps.map((app) => app.close()));
  rmSync(folder, { recursive: true });
});

async function appBehind(door: Door): Promise<FastifyInstance> {
  const shelf = { grounds: [], players: [], opening: { ground: '', hole: '7', player: '' } };
  const app = await createApp({ page: folder, stocked: { shelf, sent: new Map() }, door }, (error) => {
    throw error;
  });
  apps.push(app);
  return app;
}

type Asked = InjectOptions & { readonly url: string };

/** 503 says that the door let a request through to the store, which there is none of here. */
const PAST_THE_DOOR = [200, 503];

async function codeOf(app: FastifyInstance, asked: Asked): Promise<readonly [number, string | undefined]> {
  const sent = await app.inject(asked);
  if (PAST_THE_DOOR.includes(sent.statusCode)) return [sent.statusCode, undefined];
  if (!asked.url.startsWith('/api/')) return [sent.statusCode, sent.body];
  return [sent.statusCode, sent.json<{ faults: { code: string }[] }>().faults[0]?.code];
}

let app: FastifyInstance;
beforeAll(async () => {
  app = await appBehind({});
});

test.each<[string, Asked, readonly [number, string | undefined]]>([
  ['another name than this machine’s', { url: '/api/shelf', headers: { host: 'golf.example' } }, [421, 'host']],
  ['its own page’s origin', { url: '/api/shelf', headers: { ...OPEN, origin: ORIGIN } }, [200, undefined]],
  [
    'the origin of a page elsewhere',
    { url: '/api/shelf', headers: { ...OPEN, origin: 'https://golf.example' } },
    [403, 'origin'],
  ],
  [
    'the origin of another port',
    { url: '/api/shelf', headers: { ...OPEN, origin: 'http://localhost:80' } },
    [403, 'origin'],
  ],
  [
    'the origin of TLS, which is not spoken',
    { url: '/api/shelf', headers: { ...OPEN, origin: 'https://localhost:4310' } },
    [403, 'origin'],
  ],
  ['no origin that may be told', { url: '/api/shelf', headers: { ...OPEN, origin: 'null' } }, [403, 'origin']],
  [
    'a picture on a page elsewhere',
    { url: '/api/shelf', headers: { ...OPEN, 'sec-fetch-site': 'cross-site' } },
    [403, 'site'],
  ],
  ['a page on another port', { url: '/api/shelf', headers: { ...OPEN, 'sec-fetch-site': 'same-site' } }, [403, 'site']],
  [
    'a link elsewhere to the API',
    { url: '/api/shelf', headers: { ...OPEN, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' } },
    [403, 'site'],
  ],
  [
    'a link elsewhere to the page',
    { url: '/', headers: { ...OPEN, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' } },
    [200, undefined],
  ],
  ['a change without the header', { method: 'POST', url: '/api/backups', headers: OPEN }, [403, 'own-header']],
  [
    'a form of a page elsewhere',
    { method: 'POST', url: '/api/backups', headers: { ...OPEN, 'content-type': 'text/plain' }, payload: '{}' },
    [403, 'own-header'],
  ],
  ['a change with the header', { method: 'POST', url: '/api/backups', headers: OWN }, [503, undefined]],
  [
    'the question whether it may ask from elsewhere',
    {
      method: 'OPTIONS',
      url: '/api/backups',
      headers: {
        ...OPEN,
        origin: 'https://golf.example',
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'x-leeway',
      },
    },
    [403, 'origin'],
  ],
])('a request with %s', async (_, asked, expected) => {
  expect(await codeOf(app, asked)).toEqual(expected);
});

test('nobody elsewhere is ever told that they may read an answer', async () => {
  for (const origin of [ORIGIN, 'https://golf.example'])
    for (const url of ['/', '/api/shelf', '/health']) {
      const { headers } = await app.inject({ url, headers: { ...OPEN, origin } });
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    }
});

test('a passphrase is asked of everybody, compared whole, and ten wrong ones close the door', async () => {
  const guarded = await appBehind({ passphrase: 'larks over the links', hosts: ['plans.example'], secure: true });
  const asked = (passphrase: string | undefined): Asked => ({
    url: '/api/shelf',
    headers: {
      host: 'plans.example',
      origin: 'https://plans.example',
      ...(passphrase === undefined
        ? {}
        : { authorization: `Basic ${Buffer.from(`coach:${passphrase}`).toString('base64')}` }),
    },
  });
  const challenge = await guarded.inject(asked(undefined));
  expect([challenge.statusCode, challenge.headers['www-authenticate']]).toEqual([
    401,
    expect.stringMatching(/^Basic realm="Leeway"/),
  ]);
  expect(await codeOf(guarded, asked('larks over the links'))).toEqual([200, undefined]);
  for (let i = 0; i < 10; i++) expect(await codeOf(guarded, asked(`larks ${i}`))).toEqual([401, 'passphrase']);
  expect(await codeOf(guarded, asked('larks over the links'))).toEqual([429, 'too-many']);
});

test('past a proxy that is trusted nobody comes in', async () => {
  const proxied = await appBehind({
    passphrase: 'larks',
    hosts: ['plans.example'],
    secure: true,
    trustedProxy: '10.0.0.7',
  });
  const headers = { host: 'plans.example', authorization: `Basic ${Buffer.from('x:larks').toString('base64')}` };
  expect(await codeOf(proxied, { url: '/api/shelf', headers, remoteAddress: '10.0.0.8' })).toEqual([403, 'peer']);
  expect(await codeOf(proxied, { url: '/api/shelf', headers, remoteAddress: '::ffff:10.0.0.7' })).toEqual([
    200,
    undefined,
  ]);
});
