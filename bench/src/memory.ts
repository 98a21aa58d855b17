import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { put } from '@leeway/store';
import { MADE_AT, playerOf } from './academy.ts';
import { serveStore } from './serveStore.ts';

/**
 * `npm run bench:memory`: an hour's use of a busy desk in two minutes over the API: 600 looks at lists, 600 ladders, 300 notes, 60 files of 100 shots read, 30 of them kept,
 * 30 fits followed to their end, 12 exports, 2 backups. Says the memory in use after a collection, each ten seconds.
 */
const SECONDS = 120;
const PLAYERS = 50;
const SHOTS = 500;

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const folder = mkdtempSync(join(tmpdir(), 'leeway-memory-'));
const served = await serveStore(folder);
const owners = Array.from({ length: PLAYERS }, () => randomUUID());
for (const [i, owner] of owners.entries()) await put(served.keeping.store, playerOf(owner, `Player ${i}`, SHOTS));

const pick = (): string => owners[Math.floor(Math.random() * PLAYERS)] ?? '';
let files = 0;
const fileOfShots = (): Uint8Array => {
  files++;
  const rows = Array.from(
    { length: 100 },
    (_, i) => `7-iron,${(130 + ((i * 7 + files) % 90) / 10).toFixed(1)},${(i % 11) - 5}`,
  );
  return Buffer.from(`club,carry (m),side (m)\n${rows.join('\n')}\n`);
};
const record = (body: object): object => ({ id: randomUUID(), madeAt: MADE_AT, body });

async function keepFile(approved: boolean): Promise<unknown> {
  const [path, bytes] = [`api/players/${pick()}/shot-files?name=f${files}.csv&date=2026-05-14`, fileOfShots()];
  const { seen } = JSON.parse(await served.ask(path, bytes)) as { seen: string };
  return approved ? served.ask(`${path}&approve=${seen}`, bytes) : undefined;
}

async function fit(): Promise<unknown> {
  const [owner, errand] = [pick(), record({ task: 'fit' }) as { id: string }];
  await served.ask(`api/players/${owner}/errands`, errand);
  return served.ask(`api/players/${owner}/errands/${errand.id}/progress`);
}

/** What is done, and how often in the hour. */
const USE: readonly (readonly [times: number, act: () => Promise<unknown>])[] = [
  [600, () => served.ask('api/players')],
  [600, () => served.ask(`api/players/${pick()}/ladder`)],
  [
    300,
    () => served.ask(`api/players/${pick()}/notes`, { records: [record({ date: '2026-05-14', text: 'Aims right.' })] }),
  ],
  [30, () => keepFile(false)],
  [30, () => keepFile(true)],
  [30, fit],
  [12, () => served.ask(`api/players/${pick()}/record`)],
  [2, () => served.ask('api/backups', {})],
];

const megabytes = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(0)} MB`.padStart(8);
const start = performance.now();
const seconds = (): number => (performance.now() - start) / 1000;
const acts = USE.flatMap(([times, act]) =>
  Array.from({ length: times }, (_, i) => ({ at: ((i + 0.5) / times) * SECONDS, act })),
).toSorted((a, b) => a.at - b.at);
say(`load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}, ${acts.length} acts`);
say('seconds   done  in use  buffers  process');
let [done, told] = [0, 0];
for (const { at, act } of acts) {
  if (at > seconds()) await wait(1000 * (at - seconds()));
  await act();
  done++;
  if (seconds() < told && done < acts.length) continue;
  told += 10;
  globalThis.gc?.();
  const { heapUsed, arrayBuffers, external, rss } = process.memoryUsage();
  say(
    `${seconds().toFixed(0).padStart(7)} ${String(done).padStart(6)}${megabytes(heapUsed)} ${megabytes(arrayBuffers + external)} ${megabytes(rss)}`,
  );
}
await served.close();
rmSync(folder, { recursive: true });
