import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { refusalSchema } from '@leeway/contract';
import { type JobQueue, openQueue, openStore, type Store } from '@leeway/store';
import { newMemoryFolder, prepareFolder, removeFolder } from '@leeway/store/testing';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { createApp } from '../app.ts';
import type { Door } from '../door.ts';

/** The API on an empty embedded store, asked as its own page asks. Every JSON answer is held to the schema that its route declares. */
export interface TestApi {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly queue: JobQueue;
  readonly folder: string;
  /** The status and the JSON of an answer. */
  ask(method: 'GET' | 'POST', url: string, body?: object): Promise<{ readonly status: number; readonly json: never }>;
  close(): Promise<void>;
}

export const OWN = { host: 'localhost:4310', 'x-leeway': '1' };

export async function openTestApi(door: Door = {}): Promise<TestApi> {
  const folder = newMemoryFolder();
  await prepareFolder(folder);
  const { value: store, faults } = await openStore({ folder });
  if (store === undefined) throw new Error(JSON.stringify(faults));
  const queue = await openQueue(store, (error) => {
    throw error;
  });
  const page = join(folder, 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>Leeway</title>');
  const shelf = { grounds: [], players: [], opening: { ground: '0'.repeat(16), hole: '7', player: '0'.repeat(16) } };
  const keeping = { store, queue, backups: join(folder, 'backups') };
  const app = await createApp({ page, stocked: { shelf, sent: new Map() }, keeping, door, holdsAnswers: true }, (error) => {
    throw error;
  });
  return {
    app,
    store,
    queue,
    folder,
    ask: async (method, url, body) => {
      const asked: InjectOptions = { method, url, headers: OWN };
      const sent = await app.inject(body === undefined ? asked : body instanceof Uint8Array ? { ...asked, headers: { ...OWN, 'content-type': 'application/octet-stream' }, payload: Buffer.from(body) } : { ...asked, payload: body });
      const json: unknown = sent.json();
      if (sent.statusCode !== 200) refusalSchema.parse(json);
      return { status: sent.statusCode, json: json as never };
    },
    close: async () => {
      await app.close();
      await queue.stop();
      await store.close();
      removeFolder(folder);
    },
  };
}
