import { homedir } from 'node:os';
import { join } from 'node:path';
import type { Fault, StoredCourse } from '@leeway/contract';
import { HOUSE, wordFault } from '@leeway/contract';
import type { ListedPlayer, Store, StorePlace } from '@leeway/store';
import { type Given, type Io, type OptionSpec, Usage } from './command.ts';

/** The option that names a store, for commands that work on files as well. */
export const DATA_OPTION = {
  kind: 'text',
  value: 'DIR',
  help: 'the folder of a store; DATABASE_URL names a PostgreSQL server to hold it instead',
} as const satisfies OptionSpec;

/** Where things are kept unless it is said. */
export const USUAL_FOLDER = process.env['LEEWAY_DATA'] ?? join(homedir(), '.leeway');

/** The place of a store: its folder, and the server when the environment names one. */
export function placeOf(folder: string): StorePlace {
  const databaseUrl = process.env['DATABASE_URL'];
  return { folder, ...(databaseUrl === undefined || databaseUrl === '' ? {} : { databaseUrl }) };
}

/** Opens the store that `--data` names, works with it and closes it again. What cannot be opened is told, and gives 1. Throws `Usage` without `--data`. */
export async function withStore(given: Given, io: Io, work: (store: Store) => Promise<number>): Promise<number> {
  const folder = given.text('data');
  if (folder === undefined) throw new Usage('--data DIR is needed: the folder of the store');
  const { openStore } = await import('@leeway/store');
  const { value: store, faults } = await openStore(placeOf(folder));
  if (store === undefined) return told(faults, io);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

/** Tells faults; the exit code they come to. */
export function told(faults: readonly Fault[], io: Io): number {
  for (const fault of faults) io.err(`${wordFault(fault)}\n`);
  return faults.some(({ level }) => level === 'refused') ? 1 : 0;
}

const plain = (name: string): string => name.trim().toLowerCase();

/** The one player of a name, or of an id; otherwise why not. */
export async function playerNamed(store: Store, name: string): Promise<ListedPlayer | Fault> {
  const { playerList } = await import('@leeway/store');
  const all = await playerList(store);
  const found = all.filter(({ profile }) => plain(profile.body.name) === plain(name) || profile.owner === name);
  const [one] = found;
  if (one !== undefined && found.length === 1) return one;
  if (one !== undefined)
    return refusal(
      'several-players',
      '--player',
      `${found.length} players named ${name}`,
      `an id: ${found.map(({ profile }) => profile.owner).join(', ')}`,
    );
  return refusal(
    'no-such-player',
    '--player',
    name,
    all.length === 0 ? 'a player, but none is kept' : oneOf(all.map(({ profile }) => profile.body.name)),
  );
}

/** The one course of a name, or of an id; otherwise why not. */
export async function courseNamed(store: Store, name: string): Promise<StoredCourse | Fault> {
  const { current } = await import('@leeway/store');
  const all = await current(store, { owner: HOUSE, kind: 'course' });
  const found = all.filter(({ id, body }) => plain(body.name) === plain(name) || id === name);
  const [one] = found;
  if (one !== undefined && found.length === 1) return one.body;
  if (one !== undefined)
    return refusal(
      'several-courses',
      '--ground',
      `${found.length} courses named ${name}`,
      `an id: ${found.map(({ id }) => id).join(', ')}`,
    );
  return refusal(
    'no-such-course',
    '--ground',
    name,
    all.length === 0 ? 'a course, but none is kept' : oneOf(all.map(({ body }) => body.name)),
  );
}

export const isFault = (value: object): value is Fault => 'code' in value && 'expected' in value;

const oneOf = (names: readonly string[]): string =>
  `one of ${names.slice(0, 8).join(', ')}${names.length > 8 ? ', …' : ''}`;

export const refusal = (code: string, file: string, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file,
  found,
  expected,
});
