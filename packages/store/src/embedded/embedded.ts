import type { PGlite } from '@electric-sql/pglite';
import type { Fault, Read } from '@leeway/contract';
import { fromPglite } from 'pg-boss';
import { saysFull } from '../diskFull.ts';
import type { Database, Sql } from '../sql.ts';
import { connect } from './connection.ts';
import { type Engine, openEngine, proveSync } from './engine.ts';
import { housekeeper } from './housekeeper.ts';
import { takeOwnership } from './ownership.ts';
import { assertRoom, hasRoom } from './room.ts';

/** What a new database takes, and a little to work with. */
const START_BYTES = 48 * 2 ** 20;

/** The embedded database in a folder that is there, for this process alone. Refused: a folder that another process has open, a disk without room. */
export async function openEmbedded(folder: string): Promise<Read<Database>> {
  const ownership = takeOwnership(folder);
  if (ownership === undefined) return { faults: [inUse(folder)] };
  try {
    const engine = await openEngine(folder);
    await proveSync(engine);
    return { value: database(folder, engine, () => ownership.release()), faults: [] };
  } catch (error) {
    ownership.release();
    if (saysFull(error) || !hasRoom(folder)) return { faults: [noRoom(folder)] };
    throw error;
  }
}

const inUse = (folder: string): Fault => ({
  code: 'in-use',
  level: 'refused',
  file: folder,
  found: 'a store that another process has open',
  expected: 'one process at a time',
});

const noRoom = (folder: string): Fault => ({
  code: 'disk-full',
  level: 'refused',
  file: folder,
  found: 'no room on the disk',
  expected: `${START_BYTES / 2 ** 20} MB free`,
});

const statementsOf = (engine: Pick<PGlite, 'query' | 'exec'>): Sql => ({
  query: async <Row extends object>(text: string, values: readonly unknown[] = []) =>
    (await engine.query<Row>(text, [...values])).rows,
  script: async (text) => void (await engine.exec(text)),
});

function database(folder: string, engine: Engine, release: () => void): Database {
  const connection = connect(folder, engine);
  const keepHouse = housekeeper();

  const writing = <T>(work: (engine: PGlite) => Promise<T>): Promise<T> =>
    connection.run(async (sql) => {
      assertRoom(folder);
      await keepHouse(sql);
      return work(sql);
    });

  return {
    place: folder,
    assertRoom: (bytes) => assertRoom(folder, bytes),
    query: (text, values) => connection.run((sql) => statementsOf(sql).query(text, values)),
    script: (text) => writing((sql) => statementsOf(sql).script(text)),
    transaction: (work) =>
      writing(async (sql) => {
        await sql.exec('BEGIN');
        const result = await work(statementsOf(sql));
        await sql.exec('COMMIT');
        return result;
      }),
    forJobs: {
      backend: 'pglite',
      db: fromPglite({
        query: <T>(text: string, values?: unknown[]) => writing((sql) => sql.query<T>(text, values)),
        exec: (text) => writing((sql) => sql.exec(text)),
        listen: (channel, heard) => connection.listen(channel, heard),
      }),
    },
    close: async () => {
      await connection.close();
      release();
    },
  };
}
