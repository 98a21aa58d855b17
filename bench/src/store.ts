import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { backUp, changesAfter, current, players, put } from '@leeway/store';
import { playerOf, shotOf } from './academy.ts';
import { serveStore } from './serveStore.ts';

/**
 * `npm run bench:store [FOLDER]`: an academy's store, 200 players with 2,000 shots each, made in a folder (a temporary one unless given) and read as
 * pages read it, over the API and below it. Wall and CPU time of a call (the asker's, in the same process, with it), median of 15.
 */
const PLAYERS = 200;
const SHOTS = 2000;
const REPEATS = 15;

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0;

async function timed(name: string, work: () => Promise<unknown>, repeats = REPEATS): Promise<void> {
  const walls: number[] = [];
  const cpu: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const [start, before] = [performance.now(), process.cpuUsage()];
    await work();
    const { user, system } = process.cpuUsage(before);
    walls.push(performance.now() - start);
    cpu.push((user + system) / 1000);
  }
  say(`${name.padEnd(58)} ${median(walls).toFixed(1).padStart(10)} ms ${median(cpu).toFixed(1).padStart(10)} ms`);
}

const folder = process.argv[2] ?? mkdtempSync(join(tmpdir(), 'leeway-bench-'));
const served = await serveStore(folder);
const { store } = served.keeping;
say(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}`,
);
say(`${''.padEnd(58)} ${'wall'.padStart(13)} ${'CPU'.padStart(13)}`);

const owners = Array.from({ length: PLAYERS }, () => randomUUID());
let made = 0;
await timed(
  `a player's ${SHOTS} shots put in, one call`,
  async () => {
    const owner = owners[made++] ?? '';
    const { faults } = await put(store, playerOf(owner, `Player ${made}`, SHOTS));
    if (faults.length > 0) throw new Error(JSON.stringify(faults));
  },
  PLAYERS,
);
let turn = 0;
const next = (): string => owners[(turn++ * 37) % PLAYERS] ?? '';
await timed(`at the API: the list of ${PLAYERS} players, with what changed`, () => served.ask('api/players'));
await timed(`at the API: a ladder's data, ${SHOTS} current shots`, () => served.ask(`api/players/${next()}/ladder`));
await timed('at the API: one shot put in', () => {
  const { owner: _owner, kind: _kind, version: _version, ...shot } = shotOf(next(), randomUUID(), 1);
  return served.ask(`api/players/${next()}/shots`, { records: [shot] });
});
await timed(`in the store: the profiles of ${PLAYERS} players`, () => players(store));
await timed(`in the store: ${SHOTS} current shots of a player`, () => current(store, { owner: next(), kind: 'shot' }));
await timed('in the store: one shot put in', () => {
  const owner = next();
  return put(store, [shotOf(owner, randomUUID(), 1)]);
});
await timed('in the store: what is new for a phone', () => changesAfter(store, PLAYERS * (SHOTS + 2), [next()]));
await timed('a backup of everything', () => backUp(store, join(folder, 'backups', `${turn++}.backup`)), 1);
say(`memory ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`);
await served.close();
if (process.argv[2] === undefined) rmSync(folder, { recursive: true });
