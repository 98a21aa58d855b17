import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { HOUSE, newRecord, readPlayer } from '@leeway/contract';
import type { PlayerFile } from '@leeway/engine';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import { current, openQueue, openStore, put } from '@leeway/store';
import { MADE_AT, newFolder, newId, removeFolder, startRealServer } from '@leeway/store/testing';

/**
 * `npm run bench:queue`: plans of one hole, queued on a real PostgreSQL server and made by one worker process, then by two. Says plans a second, and the workers' time at the
 * processors for a plan: where that stays the same, two workers with a processor each do twice as much, however busy this machine is.
 */
const PLANS = 8;
const HOLE = '3';
const TICKS_A_SECOND = 100;

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const LEEWAY = fileURLToPath(new URL('../../packages/cli/bin/leeway.js', import.meta.url));

const server = await startRealServer();
const folder = newFolder();
const databaseUrl = await server.newDatabase();
const { value: store, faults } = await openStore({ folder, databaseUrl });
if (store === undefined) throw new Error(JSON.stringify(faults));
const queue = await openQueue(store, (error) => say(error.message));
const workers: ChildProcess[] = [];

async function startWorker(): Promise<void> {
  const env = { ...process.env, DATABASE_URL: databaseUrl };
  const worker = spawn(process.execPath, [LEEWAY, 'work', '--data', folder], {
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  workers.push(worker);
  for await (const _ of createInterface({ input: worker.stdout })) return;
}

/** Seconds at the processors so far of all workers, as Linux counts them. */
const workersCpuS = (): number =>
  workers.reduce((sum, { pid }) => {
    const fields = readFileSync(`/proc/${pid ?? 0}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ');
    return sum + (Number(fields[11]) + Number(fields[12])) / TICKS_A_SECOND;
  }, 0);

async function plansASecond(player: PlayerFile): Promise<{ readonly rate: number; readonly cpuS: number }> {
  const before = workersCpuS();
  const owner = newId();
  const { version: _, patterns = [], ...profile } = player;
  const from = { sessions: [], shots: [], model: 'a Player file' };
  await put(open, [
    newRecord('profile', { owner, id: newId(), madeAt: MADE_AT, body: profile as never }),
    newRecord('fitted', { owner, id: newId(), madeAt: MADE_AT, body: { patterns: patterns as never, from } }),
  ]);
  const errands = Array.from({ length: PLANS }, () =>
    newRecord('errand', {
      owner,
      id: newId(),
      madeAt: MADE_AT,
      body: { task: 'plan', date: '2026-05-16', course, holes: [HOLE] },
    }),
  );
  await put(open, errands);
  for (const { id } of errands) await queue.send('plan', { owner, about: [id] }, id);
  let first = 0;
  for (;;) {
    const done = (await current(open, { owner, kind: 'plan' })).length;
    if (first === 0 && done >= workers.length) first = performance.now();
    if (done === PLANS)
      return {
        rate: (1000 * (PLANS - workers.length)) / (performance.now() - first),
        cpuS: (workersCpuS() - before) / PLANS,
      };
    await wait(50);
  }
}

const open = store;
const course = newId();
const { value: player } = readPlayer(readFileSync(DEMO_PLAYERS[0]?.player ?? '', 'utf8'), 'player');
if (player === undefined) throw new Error('the demo was refused');
const ground = { file: 'tolvane.geojson', text: readFileSync(DEMO.ground, 'utf8') };
await put(store, [
  newRecord('course', { owner: HOUSE, id: course, madeAt: MADE_AT, body: { name: 'Tolvane Links', ground } }),
]);

say(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}`,
);
await startWorker();
const one = await plansASecond(player);
say(
  `one worker process   ${one.rate.toFixed(2)} plans/s, ${one.cpuS.toFixed(2)} s of processor a plan, load ${loadavg()[0]?.toFixed(1) ?? '?'}`,
);
await startWorker();
const two = await plansASecond(player);
say(
  `two worker processes ${two.rate.toFixed(2)} plans/s, ${two.cpuS.toFixed(2)} s of processor a plan, load ${loadavg()[0]?.toFixed(1) ?? '?'}: ${(two.rate / one.rate).toFixed(2)} times`,
);
for (const worker of workers) worker.kill('SIGTERM');
await queue.stop();
await store.close();
await server.stop();
removeFolder(folder);
