import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Read } from '@leeway/contract';
import { openQueue, openStore, type StorePlace } from '@leeway/store';
import type { Keeping } from './api/kept.ts';
import { doErrands } from './work/errands.ts';

/** A store that is served, with whoever does its long work. */
export interface OpenKeeping {
  readonly keeping: Keeping;
  close(): Promise<void>;
}

const WORKER = fileURLToPath(new URL('work/process.ts', import.meta.url));
const AGAIN_AFTER_MS = 2000;

/**
 * Opens the store to serve, its queue, and its workers: in this process for the embedded database, so many processes of their own for a server. Refused as
 * `openStore` refuses.
 */
export async function openKeeping(
  place: StorePlace,
  processes: number,
  told: (line: string) => void,
): Promise<Read<OpenKeeping>> {
  const { value: store, faults } = await openStore(place);
  if (store === undefined) return { faults };
  const queue = await openQueue(store, ({ message }) => told(message));
  const embedded = place.databaseUrl === undefined;
  if (embedded) await doErrands(store, queue, told);
  const workers = embedded ? undefined : startProcesses(place.folder, processes, told);
  const close = async (): Promise<void> => {
    await workers?.stop();
    await queue.stop();
    await store.close();
  };
  return { value: { keeping: { store, queue, backups: join(place.folder, 'backups') }, close }, faults: [] };
}

/** Worker processes, each started again when it ends by itself. */
function startProcesses(folder: string, count: number, told: (line: string) => void): { stop(): Promise<void> } {
  let stopping = false;
  const running = new Set<ChildProcess>();
  const start = (): void => {
    const worker = fork(WORKER, [folder], { execArgv: [] });
    running.add(worker);
    worker.once('exit', (code) => {
      running.delete(worker);
      if (stopping) return;
      told(`a worker ended with ${code ?? 'a signal'}; another is started`);
      setTimeout(() => stopping || start(), AGAIN_AFTER_MS).unref();
    });
  };
  for (let i = 0; i < count; i++) start();
  return {
    stop: async () => {
      stopping = true;
      await Promise.all(
        [...running].map(async (worker) => {
          const ended = once(worker, 'exit');
          worker.disconnect();
          await ended;
        }),
      );
    },
  };
}
