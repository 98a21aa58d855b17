import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { newRecord } from '@leeway/contract';
import { backUp, changesAfter, current, openStore, players, put } from '@leeway/store';

/**
 * `npm run bench:store [FOLDER]`: an academy's store, 200 players with 2,000 shots each, made in a folder (a temporary one unless given) and read as
 * pages read it. Wall and CPU time of a call, median of 15.
 */
const PLAYERS = 200;
const SHOTS = 2000;
const REPEATS = 15;
const CLUBS = ['driver', '3-wood', '5-iron', '6-iron', '7-iron', '8-iron', '9-iron', 'wedge'];
const MADE_AT = '2026-05-14T09:30:00Z';

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
const { value: store, faults } = await openStore({ folder });
if (store === undefined) throw new Error(JSON.stringify(faults));
say(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}`,
);
say(`${''.padEnd(58)} ${'wall'.padStart(13)} ${'CPU'.padStart(13)}`);

const owners = Array.from({ length: PLAYERS }, () => randomUUID());
const shotOf = (owner: string, session: string, i: number) =>
  newRecord('shot', {
    owner,
    id: randomUUID(),
    madeAt: MADE_AT,
    body: {
      session,
      club: CLUBS[i % CLUBS.length] ?? '',
      swing: 'full',
      carryM: 60 + (i % 997) / 5,
      sideM: ((i * 31) % 41) / 2 - 10,
      readings: { 'ball speed': 50.4, launch: 19.2, spin: 6120 },
      raw: { line: i + 2, cells: ['7-iron', '143.7', '2.7 L'] },
    },
  });
let made = 0;
await timed(
  `a player's ${SHOTS} shots put in, one call`,
  async () => {
    const owner = owners[made++] ?? '';
    const session = randomUUID();
    const header = { owner, madeAt: MADE_AT };
    const shots = Array.from({ length: SHOTS }, (_, i) => shotOf(owner, session, i));
    const { faults: refused } = await put(store, [
      newRecord('profile', { ...header, id: randomUUID(), body: { name: `Player ${made}` } }),
      newRecord('session', { ...header, id: session, body: { date: '2026-05-14', purpose: 'range' } }),
      ...shots,
    ]);
    if (refused.length > 0) throw new Error(JSON.stringify(refused));
  },
  PLAYERS,
);
let turn = 0;
const next = (): string => owners[(turn++ * 37) % PLAYERS] ?? '';
await timed(`the list of ${PLAYERS} players`, () => players(store));
await timed(`a ladder's data: ${SHOTS} current shots of a player`, () =>
  current(store, { owner: next(), kind: 'shot' }),
);
await timed('one shot put in', () => {
  const owner = next();
  return put(store, [shotOf(owner, randomUUID(), 1)]);
});
await timed('what is new for a phone', () => changesAfter(store, PLAYERS * (SHOTS + 2), [next()]));
await timed('a backup of everything', () => backUp(store, join(folder, 'backups', `${turn++}.backup`)), 1);
say(`memory ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`);
await store.close();
if (process.argv[2] === undefined) rmSync(folder, { recursive: true });
