import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { type LadderData, newRecord, type Standing, type StoredRecord } from '@leeway/contract';
import { current, get, openQueue, openStore, put, type Store } from '@leeway/store';
import { MADE_AT, newFolder, newId, type RealServer, removeFolder, startRealServer } from '@leeway/store/testing';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { storeDemo } from '../testdata/demoStored.ts';
import { openTestApi, OWN } from '../testdata/testApi.ts';
import { doErrands, resultOf } from './errands.ts';

test(
  'in one process, a fit and a plan are done beside the API and followed as they go',
  { timeout: 120_000 },
  async () => {
    const api = await openTestApi();
    const { owner, course } = await storeDemo(api.store);
    const told: string[] = [];
    await doErrands(api.store, api.queue, (line) => told.push(line));
    const ask = async (body: object): Promise<readonly [string, Standing[]]> => {
      const errand = { id: newId(), madeAt: MADE_AT, body };
      const url = `/api/players/${owner}/errands`;
      expect((await api.ask('POST', url, errand)).status).toBe(200);
      expect((await api.ask('POST', url, errand)).status).toBe(200);
      const sent = await api.app.inject({ url: `${url}/${errand.id}/progress`, headers: OWN });
      expect(sent.headers['content-type']).toBe('text/event-stream; charset=utf-8');
      const events = sent.body
        .split('\n\n')
        .flatMap((event) => (event.startsWith('data: ') ? [JSON.parse(event.slice(6)) as Standing] : []));
      return [errand.id, events];
    };

    const [, fitted] = await ask({ task: 'fit' });
    expect(fitted.at(-1)).toMatchObject({ state: 'done', retry: 0 });
    const { json } = await api.ask('GET', `/api/players/${owner}/ladder`);
    const ladder = json as LadderData;
    expect(ladder.fitted).toMatchObject({ id: fitted.at(-1)?.result, upToDate: true });
    expect(ladder.fitted?.ladder?.entries.length).toBeGreaterThan(10);

    const [, planned] = await ask({ task: 'plan', date: '2026-05-16', course, holes: ['3'] });
    expect(planned.at(-1)).toMatchObject({ state: 'done', done: 1, total: 1 });
    expect(new Set(planned.map(({ done }) => done)).size).toBeGreaterThan(1);
    const plan = (await get(api.store, owner, planned.at(-1)?.result ?? '')) as StoredRecord<'plan'>;
    expect(plan.body).toMatchObject({ date: '2026-05-16', course, fitted: ladder.fitted?.id });
    expect(plan.body.plan.holes.map(({ hole }) => hole)).toEqual(['3']);
    expect(await current(api.store, { owner, kind: 'plan' })).toHaveLength(1);

    const [round, ...strokes] = [newId(), newId(), newId(), newId(), newId()];
    const places = [
      { beyondFlagM: -22, rightOfFlagM: 12 },
      { beyondFlagM: -3, rightOfFlagM: 0 },
      { beyondFlagM: 0, rightOfFlagM: 0.5 },
    ];
    const record = (id: string, body: object) => ({ records: [{ id, madeAt: MADE_AT, body }] });
    await api.ask('POST', `/api/players/${owner}/rounds`, record(round, { date: '2026-05-16', course }));
    for (const [i, id] of strokes.entries()) {
      const finish = places[i];
      const body = {
        round,
        hole: '3',
        shot: i + 1,
        ...(i === 0 ? { club: '6-iron' } : {}),
        ...(finish === undefined ? { holed: true } : { finish }),
      };
      expect((await api.ask('POST', `/api/players/${owner}/strokes`, record(id, body))).status).toBe(200);
    }
    const [, accounted] = await ask({ task: 'ledger', round });
    expect(accounted.at(-1)?.state).toBe('done');
    expect(new Set(accounted.map(({ done }) => done)).size).toBeGreaterThan(1);
    const kept = (await get(api.store, owner, accounted.at(-1)?.result ?? '')) as StoredRecord<'ledger'>;
    expect(kept.body).toMatchObject({ round, strokes, fitted: ladder.fitted?.id });
    expect(kept.body.ledger.rounds[0]).toMatchObject({ date: '2026-05-16', score: 4, holes: 1 });
    expect(kept.body.ledger.habits.map(({ habit }) => habit)).toContain('strike');

    const [, impossible] = await ask({ task: 'plan', date: '2026-05-16', course, holes: ['19'] });
    expect(impossible.at(-1)?.state).toBe('failed');
    expect(told).toEqual([expect.stringContaining('hole 19')]);
    await api.close();
  },
);

const WORKER = fileURLToPath(new URL('../testdata/workerProcess.ts', import.meta.url));

let server: RealServer;
const folder = newFolder();
const workers: ChildProcess[] = [];
beforeAll(async () => {
  server = await startRealServer();
}, 60_000);
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL');
  await server.stop();
  removeFolder(folder);
}, 60_000);

async function startWorker(databaseUrl: string): Promise<ChildProcess> {
  const worker = spawn(process.execPath, [WORKER, folder, databaseUrl], { stdio: ['ignore', 'pipe', 'inherit'] });
  workers.push(worker);
  for await (const line of createInterface({ input: worker.stdout })) if (line === 'ready') break;
  return worker;
}

async function openServed(): Promise<{ readonly databaseUrl: string; readonly store: Store }> {
  const databaseUrl = await server.newDatabase();
  const { value: store } = await openStore({ folder, databaseUrl });
  if (store === undefined) throw new Error('no store');
  return { databaseUrl, store };
}

test('a worker killed in the middle of a plan: another makes the whole plan, once', { timeout: 150_000 }, async () => {
  const { databaseUrl, store } = await openServed();
  const { owner, course } = await storeDemo(store);
  const queue = await openQueue(store, () => undefined);
  const [first] = [await startWorker(databaseUrl)];
  const id = newId();
  const body = { task: 'plan', date: '2026-05-16', course, holes: ['3', '6'] } as const;
  await put(store, [newRecord('errand', { owner, id, madeAt: MADE_AT, body: { ...body, holes: [...body.holes] } })]);
  await queue.send('plan', { owner, about: [id] }, id);
  const far = async (): Promise<number> =>
    (await store.database.query<{ done: number }>('SELECT done FROM leeway.progress WHERE job = $1', [id]))[0]?.done ??
    0;
  await vi.waitFor(async () => expect(await far()).toBeGreaterThanOrEqual(1), { timeout: 60_000, interval: 20 });
  first.kill('SIGKILL');
  await once(first, 'close');
  expect(await get(store, owner, resultOf(id))).toBeUndefined();
  await startWorker(databaseUrl);
  await vi.waitFor(async () => expect(await get(store, owner, resultOf(id))).toBeDefined(), {
    timeout: 90_000,
    interval: 100,
  });
  expect(await current(store, { owner, kind: 'plan' })).toHaveLength(1);
  await vi.waitFor(async () => expect(await queue.find('plan', id)).toMatchObject({ state: 'done', retry: 1 }), 10_000);
  await queue.stop();
  await store.close();
});
