import type { Fault, Read } from '@leeway/contract';
import pg from 'pg';
import { DiskFull, saysFull } from './diskFull.ts';
import type { Database, Sql } from './sql.ts';

/** Connections that one process holds, the queue's own apart. */
const CONNECTIONS = 8;

/** A PostgreSQL server by its URL. Refused: a server that does not answer, or one that does not sync what it commits. */
export async function openServer(url: string): Promise<Read<Database>> {
  const place = withoutPassword(url);
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    options: '-c synchronous_commit=on',
  });
  // A connection that breaks while nobody uses it is replaced at the next use.
  pool.on('error', () => undefined);
  try {
    const [settings] = await rowsOf<{ fsync: string }>(pool, `SELECT current_setting('fsync') AS fsync`);
    if (settings?.fsync === 'on') return { value: database(place, url, pool), faults: [] };
    await pool.end();
    return { faults: [refused('no-sync', place, 'a server with fsync off', 'one that syncs what it commits')] };
  } catch (error) {
    await pool.end();
    const found = error instanceof Error ? error.message || 'no answer' : String(error);
    return { faults: [refused('no-server', place, found, 'a PostgreSQL server that answers')] };
  }
}

const refused = (code: string, file: string, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file,
  found,
  expected,
});

/** The URL as it may be shown. */
function withoutPassword(url: string): string {
  if (!URL.canParse(url)) return 'the database address';
  const shown = new URL(url);
  shown.password = '';
  return shown.href;
}

type Asked = pg.Pool | pg.PoolClient;

async function rowsOf<Row extends object>(asked: Asked, text: string, values: readonly unknown[] = []) {
  const { rows } = await asked.query<Row>(text, [...values]);
  return rows;
}

const statementsOf = (asked: Asked): Sql => ({
  query: (text, values) => rowsOf(asked, text, values),
  script: async (text) => void (await asked.query(text)),
});

function database(place: string, url: string, pool: pg.Pool): Database {
  return {
    place,
    ...statementsOf(pool),
    // The server's own disk is out of sight; it says so when it is full.
    assertRoom: () => undefined,
    transaction: async (work) => {
      const client = await pool.connect();
      let broken: Error | undefined;
      try {
        await client.query('BEGIN');
        const result = await work(statementsOf(client));
        await client.query('COMMIT');
        return result;
      } catch (error) {
        await client.query('ROLLBACK').catch((failed: unknown) => {
          broken = failed instanceof Error ? failed : new Error(String(failed));
        });
        throw saysFull(error) ? new DiskFull(place, error) : error;
      } finally {
        client.release(broken);
      }
    },
    forJobs: { backend: 'postgres', connectionString: url },
    close: () => pool.end(),
  };
}
