import { openQueue, openStore, type StorePlace } from '@leeway/store';
import type { Read } from '@leeway/contract';
import { doErrands } from './errands.ts';

/** A process that does a store's long work. */
export interface Working {
  /** Waits for what is being done, and lets go. */
  stop(): Promise<void>;
}

/** Opens a store on a server and does its errands here. Refused as `openStore` refuses. */
export async function startWorking(place: StorePlace, told: (line: string) => void): Promise<Read<Working>> {
  const { value: store, faults } = await openStore(place);
  if (store === undefined) return { faults };
  const queue = await openQueue(store, ({ message }) => told(message));
  await doErrands(store, queue, told);
  const stop = async (): Promise<void> => {
    await queue.stop();
    await store.close();
  };
  return { value: { stop }, faults: [] };
}
