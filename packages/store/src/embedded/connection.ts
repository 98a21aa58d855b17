import type { PGlite } from '@electric-sql/pglite';
import { DiskFull, saysFull } from '../diskFull.ts';
import { type Engine, openEngine } from './engine.ts';
import { assertRoom } from './room.ts';

/** The embedded engine's one connection. */
export interface Connection {
  /**
   * Runs work on the connection, alone: whatever else is asked waits. What it leaves open after an error is rolled back. An engine that stopped
   * (a disk without room for its journal, a failed sync) is never asked again: the next work opens a new one, which recovers from the journal.
   */
  run<T>(work: (engine: PGlite) => Promise<T>): Promise<T>;
  /** Hears notifications of a channel, of every engine there will be; returns how to stop. */
  listen(channel: string, heard: (payload: string) => void): Promise<() => Promise<void>>;
  close(): Promise<void>;
}

export function connect(folder: string, first: Engine): Connection {
  let engine: Engine | undefined = first;
  let last: Promise<unknown> = Promise.resolve();
  const listening = new Map<string, (payload: string) => void>();

  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = last.then(work);
    last = turn.catch(() => undefined);
    return turn;
  };

  async function running(): Promise<Engine> {
    if (engine !== undefined) return engine;
    assertRoom(folder);
    const opened = await openEngine(folder);
    for (const [channel, heard] of listening) await opened.sql.listen(channel, heard);
    engine = opened;
    return opened;
  }

  async function abandon(used: Engine, error: Error): Promise<void> {
    engine = undefined;
    used.files.cutOff(error);
    await used.files.closeFs().catch(() => undefined);
  }

  /** The connection is fit for the next work after an error, or given up. */
  async function setRight(used: Engine, error: Error): Promise<void> {
    if (used.files.failure !== undefined || hasStopped(error)) await abandon(used, error);
    else if (used.sql.isInTransaction()) await used.sql.exec('ROLLBACK');
  }

  const run: Connection['run'] = (work) =>
    inTurn(async () => {
      const used = await running();
      try {
        const result = await work(used.sql);
        if (used.files.failure !== undefined) throw used.files.failure;
        return result;
      } catch (thrown) {
        const error = thrown instanceof Error ? thrown : new Error(String(thrown));
        await setRight(used, error);
        throw saysFull(error) ? new DiskFull(folder, error) : error;
      }
    });

  return {
    run,
    listen: async (channel, heard) => {
      listening.set(channel, heard);
      await run((sql) => sql.listen(channel, heard));
      return async () => {
        listening.delete(channel);
        await run((sql) => sql.unlisten(channel));
      };
    },
    close: () => inTurn(async () => engine?.sql.close()),
  };
}

/** After anything but an answer of the engine, good or bad, it may be in any state; asked again it can hang. */
const hasStopped = (error: unknown): boolean =>
  ['RuntimeError', 'ExitStatus'].includes(String(propertyOf(error, 'name'))) ||
  ['FATAL', 'PANIC'].includes(String(propertyOf(error, 'severity')));

const propertyOf = (error: unknown, name: string): unknown =>
  typeof error === 'object' && error !== null ? Reflect.get(error, name) : undefined;
