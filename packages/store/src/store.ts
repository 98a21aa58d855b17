import { randomUUID } from 'node:crypto';
import fs from 'node:fs';
import { join } from 'node:path';
import type { Fault, Read } from '@leeway/contract';
import { openEmbedded } from './embedded/embedded.ts';
import { type KeyRing, openKeyRing } from './keyRing.ts';
import { migrate } from './migrate.ts';
import { openServer } from './server.ts';
import type { Database } from './sql.ts';

/** An open store. Everything the package offers takes it first. */
export interface Store {
  /** Made with the store: where a phone's place in the changes counts. */
  readonly id: string;
  readonly database: Database;
  readonly keys: KeyRing;
  close(): Promise<void>;
}

export interface StorePlace {
  /** Holds the keys, and the database when it is embedded. Made when it is not there. */
  readonly folder: string;
  /** A PostgreSQL server instead of the embedded database. */
  readonly databaseUrl?: string;
}

/**
 * Opens the store, made or brought to the newest shape first. Refused: a folder that another process has open, a server that does not answer,
 * a database that a newer program has used or whose keys are not in the folder, a disk without room, a folder that cannot be written in.
 */
export async function openStore({ folder, databaseUrl }: StorePlace): Promise<Read<Store>> {
  const faulty = unusable(folder);
  if (faulty !== undefined) return { faults: [faulty] };
  const { value: database, faults } =
    databaseUrl === undefined ? await openEmbedded(folder) : await openServer(databaseUrl);
  if (database === undefined) return { faults };
  const opened = await prepare(database, folder).catch(async (error: unknown) => {
    await database.close();
    throw error;
  });
  if (opened.value === undefined) await database.close();
  return opened;
}

/** Makes the folder; why it cannot be used, if so. */
function unusable(folder: string): Fault | undefined {
  try {
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    fs.accessSync(folder, fs.constants.R_OK | fs.constants.W_OK | fs.constants.X_OK);
    return undefined;
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error);
    return { code: 'folder', level: 'refused', file: folder, found, expected: 'a folder that can be written in' };
  }
}

async function prepare(database: Database, folder: string): Promise<Read<Store>> {
  const faults = await migrate(database);
  if (faults.length > 0) return { faults };
  const id = await identity(database);
  const keyFolder = join(folder, 'keys', id);
  if (!fs.existsSync(keyFolder) && (await holdsRecords(database))) return { faults: [keysMissing(database, folder)] };
  const keys = openKeyRing(keyFolder);
  await finishErasures(database, keys);
  return { value: { id, database, keys, close: () => database.close() }, faults: [] };
}

async function identity(database: Database): Promise<string> {
  await database.query('INSERT INTO leeway.store (id) VALUES ($1) ON CONFLICT DO NOTHING', [randomUUID()]);
  const [row] = await database.query<{ id: string }>('SELECT id FROM leeway.store');
  if (row === undefined) throw new Error(`The store at ${database.place} has no id.`);
  return row.id;
}

async function holdsRecords(database: Database): Promise<boolean> {
  const rows = await database.query<{ owner: string }>('SELECT owner FROM leeway.record LIMIT 1');
  return rows.length > 0;
}

/** An erasure that was broken off after its rows were gone: the key goes now. */
async function finishErasures(database: Database, keys: KeyRing): Promise<void> {
  for (const { owner } of await database.query<{ owner: string }>('SELECT owner FROM leeway.tombstone'))
    keys.destroy(owner);
}

const keysMissing = (database: Database, folder: string): Fault => ({
  code: 'keys-missing',
  level: 'refused',
  file: database.place,
  found: `records whose keys are not in ${folder}`,
  expected: 'the folder that was used with this database, or a backup restored into a new one',
});
