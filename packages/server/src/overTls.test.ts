import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Served } from './app.ts';
import { serve, type Serving } from './serve.ts';

/** A certificate and key made for this test alone. */
const pem = (name: string): string => readFileSync(new URL(`testdata/${name}.pem`, import.meta.url), 'utf8');

const folder = mkdtempSync(join(tmpdir(), 'leeway-tls-'));
let serving: Serving;
let bare: Served;
beforeAll(async () => {
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Leeway</title>');
  const shelf = { grounds: [], players: [], opening: { ground: '', hole: '7', player: '' } };
  const door = { passphrase: 'larks over the links', hosts: ['plans.example'], secure: true } as const;
  const served = { page: folder, stocked: { shelf, sent: new Map<string, string>() }, door };
  const tls = { cert: pem('tlsCert'), key: pem('tlsKey') };
  serving = await serve(0, { ...served, tls }, (error) => {
    throw error;
  });
  bare = served;
});
afterAll(async () => {
  await serving.close();
  rmSync(folder, { recursive: true });
});

const statusOf = (headers: Readonly<Record<string, string>>): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    const options = { headers, ca: pem('tlsCert'), servername: 'plans.example' };
    get(serving.address, options, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    }).on('error', reject);
  });

test('over TLS of its own the page is served to whoever has the passphrase, from its own origin', async () => {
  const host = 'plans.example';
  const authorization = `Basic ${Buffer.from('coach:larks over the links').toString('base64')}`;
  expect(serving.address).toMatch(/^https:/);
  expect(await statusOf({ host })).toBe(401);
  expect(await statusOf({ host, authorization, origin: `http://${host}` })).toBe(403);
  expect(await statusOf({ host, authorization, origin: `https://${host}` })).toBe(200);
  await expect(fetch(serving.address.replace('https', 'http'))).rejects.toThrow('fetch failed');
});

test('without TLS nothing but this machine’s own address is listened on', async () => {
  await expect(serve(0, bare, () => undefined, '0.0.0.0')).rejects.toThrow('no TLS');
});
