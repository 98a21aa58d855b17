import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { erasePlayer } from './erase.ts';
import { openQueue, type RunningJob } from './jobs.ts';
import { openStore, type StorePlace } from './store.ts';
import { filesHolding } from './testdata/grepBytes.ts';
import { prepareFolder } from './testdata/preparedFolder.ts';
import { type RealServer, startRealServer } from './testdata/realServer.ts';
import { newId } from './testdata/records.ts';
import { temporaryFolder } from './testdata/temporary.ts';

const WORKER = fileURLToPath(new URL('testdata/worker.ts', import.meta.url));
const WAITING_WORKER = fileURLToPath(new URL('testdata/waitingWorker.ts', import.meta.url));
/** A dead worker is noticed after its heartbeat has run out, and that is looked for now and then. */
const NOTICED_WITHIN_MS = 90_000;

let server: RealServer;
beforeAll(async () => {
  server = await startRealServer();
}, 60_000);
afterAll(() => server.stop(), 60_000);

const BACK_ENDS: readonly (readonly [string, () => Promise<StorePlace>])[] = [
  [
    'the embedded database',
    async () => {
      const folder = temporaryFolder();
      await prepareFolder(folder);
      return { folder };
    },
  ],
  ['a PostgreSQL server', async () => ({ folder: temporaryFolder(), databaseUrl: await server.newDatabase() })],
];

async function openWithQueue(place: StorePlace, onError: (error: Error) => void = () => undefined) {
  const { value: store, faults } = await openStore(place);
  if (store === undefined) throw new Error(JSON.stringify(faults));
  const queue = await openQueue(store, onError);
  return {
    store,
    queue,
    close: async () => {
      await queue.stop();
      await store.close();
    },
  };
}

/** A worker process, and what it has said so far. */
function startWorker({ folder, databaseUrl }: StorePlace): { readonly worker: ChildProcess; readonly said: string[] } {
  const args = databaseUrl === undefined ? [folder] : [folder, databaseUrl];
  const worker = spawn(process.execPath, [WORKER, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
  const said: string[] = [];
  createInterface({ input: worker.stdout }).on('line', (line) => said.push(line));
  return { worker, said };
}

async function killed(worker: ChildProcess): Promise<void> {
  worker.kill('SIGKILL');
  await once(worker, 'close');
}

describe.each(BACK_ENDS)('the queue on %s', (name, newPlace) => {
  test('does each job once, soon, and again what threw', { timeout: 60_000 }, async () => {
    const errors: string[] = [];
    const { queue, close } = await openWithQueue(await newPlace(), ({ message }) => void errors.push(message));
    const runs: RunningJob[] = [];
    await queue.work('plan', 4, async (job) => {
      runs.push(job);
      if (job.about.length === 0 && job.retry === 0) throw new Error('Stumbled.');
    });
    const owner = newId();
    const about = [newId()];
    const ids = Array.from({ length: 20 }, newId);
    for (const id of [...ids, ...ids]) await queue.send('plan', { owner, about }, id);
    await vi.waitFor(() => expect(runs).toHaveLength(20), 30_000);
    expect(runs.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
    expect(runs[0]).toMatchObject({ owner, about, retry: 0 });
    const stumbling = newId();
    await queue.send('plan', { owner, about: [] }, stumbling);
    await vi.waitFor(() => expect(runs.filter(({ id }) => id === stumbling)).toHaveLength(2), 30_000);
    expect(errors).toEqual(['Stumbled.']);
    await vi.waitFor(
      async () => expect(await queue.find('plan', stumbling)).toEqual({ owner, about: [], state: 'done', retry: 1 }),
      30_000,
    );
    expect(await queue.find('plan', newId())).toBeUndefined();
    await close();
  });

  test('forgets the jobs of a player who is erased', { timeout: 60_000 }, async () => {
    const place = await newPlace();
    const { store, queue, close } = await openWithQueue(place);
    const [erased, other] = [newId(), newId()];
    for (const owner of [erased, erased, other]) await queue.send('plan', { owner, about: [] }, newId());
    expect((await erasePlayer(store, erased)).value).toMatchObject({ jobs: 2 });
    const rows = await store.database.query<{ owner: string }>(`SELECT data->>'owner' AS owner FROM leeway_jobs.job`);
    expect(rows.map(({ owner }) => owner)).toEqual([other]);
    expect(filesHolding(place.folder, 'Tilda')).toEqual([]);
    await close();
  });

  // On a server the same is seen of a whole plan, in packages/server.
  test.runIf(name === 'the embedded database')(
    'runs a job again, once, when its worker was killed half-way',
    { timeout: 180_000 },
    async () => {
      const place = await newPlace();
      const first = await openWithQueue(place);
      const id = newId();
      await first.queue.send('plan', { owner: newId(), about: [] }, id);
      await first.close();
      const one = startWorker(place);
      await vi.waitFor(() => expect(one.said).toContain(`began ${id} 0`), 60_000);
      await killed(one.worker);
      const two = startWorker(place);
      await vi.waitFor(() => expect(two.said).toContain(`done ${id}`), NOTICED_WITHIN_MS);
      await new Promise((resolve) => setTimeout(resolve, 5000));
      await killed(two.worker);
      expect([...one.said, ...two.said].filter((line) => line.startsWith('began'))).toEqual([
        `began ${id} 0`,
        `began ${id} 1`,
      ]);
    },
  );
});

test('two worker processes on a server do at least 1.8 times what one does', { timeout: 120_000 }, async () => {
  const [JOBS, JOB_MS] = [16, 150];
  const place = { folder: temporaryFolder(), databaseUrl: await server.newDatabase() };
  const { queue, close } = await openWithQueue(place);
  const said: string[] = [];
  const workers: ChildProcess[] = [];
  const startAnother = async (): Promise<void> => {
    const args = [WAITING_WORKER, place.folder, place.databaseUrl, String(JOB_MS)];
    const worker = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    createInterface({ input: worker.stdout }).on('line', (line) => said.push(line));
    workers.push(worker);
    await vi.waitFor(() => expect(said.filter((line) => line === 'ready')).toHaveLength(workers.length), {
      timeout: 30_000,
    });
  };
  /** From the first job's end to the last one's: what came before is no work. */
  const jobsASecond = async (): Promise<number> => {
    said.splice(0, said.length, ...said.filter((line) => line === 'ready'));
    const ended = (): number[] => said.flatMap((line) => (line.startsWith('done ') ? [Number(line.slice(5))] : []));
    await Promise.all(Array.from({ length: JOBS }, () => queue.send('wait', { owner: newId(), about: [] }, newId())));
    await vi.waitFor(() => expect(ended()).toHaveLength(JOBS), { timeout: 30_000, interval: 20 });
    return (1000 * (JOBS - workers.length)) / (Math.max(...ended()) - Math.min(...ended()));
  };
  await startAnother();
  const one = await jobsASecond();
  await startAnother();
  let gain = 0;
  // Other work on the machine can only lower it.
  for (let i = 0; i < 3 && gain < 1.8; i++) gain = (await jobsASecond()) / one;
  for (const worker of workers) await killed(worker);
  await close();
  expect(gain).toBeGreaterThanOrEqual(1.8);
});
