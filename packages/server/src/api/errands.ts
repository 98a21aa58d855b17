import { Readable } from 'node:stream';
import { setTimeout as wait } from 'node:timers/promises';
import {
  type Errand,
  newRecord,
  sentRecordOf,
  type Standing,
  standingSchema,
  type StoredRecord,
} from '@leeway/contract';
import { get, progressOf, put } from '@leeway/store';
import * as z from 'zod';
import { notThere } from '../refusal.ts';
import { resultOf } from '../work/errands.ts';
import { orRefuse, type Keeping } from './kept.ts';
import { ofPlayer, recordOfPlayer } from './paths.ts';
import type { Api } from './route.ts';

const LOOKED_AT_MS = 200;
/** So often something is sent, that nobody between takes the line for dead. */
const SIGN_OF_LIFE_MS = 15_000;

/** Long work: asked for, looked at, and followed as it goes on. */
export function errandRoutes(api: Api, keeping: Keeping): void {
  const tags = ['long work'];
  const { store, queue } = keeping;
  const closing = new AbortController();
  api.addHook('preClose', (done) => {
    closing.abort();
    done();
  });

  api.post(
    '/api/players/:player/errands',
    {
      schema: {
        tags,
        summary: 'Ask for a fit of the patterns or a plan; asked again under its id it is not done again',
        params: ofPlayer,
        body: sentRecordOf('errand'),
        response: { 200: standingSchema },
      },
    },
    async ({ params: { player }, body: { id, madeAt, body } }) => {
      const errand = newRecord('errand', { owner: player, id, madeAt, body: body as Errand });
      orRefuse(await put(store, [errand]));
      await queue.send((body as Errand).task, { owner: player, about: [id] }, id);
      return standingOf(keeping, player, id);
    },
  );
  api.get(
    '/api/players/:player/errands/:id',
    { schema: { tags, summary: 'How long work stands', params: recordOfPlayer, response: { 200: standingSchema } } },
    ({ params: { player, id } }) => standingOf(keeping, player, id),
  );
  api.get(
    '/api/players/:player/errands/:id/progress',
    {
      schema: {
        tags,
        summary: 'How it stands each time that changes, until it ends, as server-sent events',
        produces: ['text/event-stream'],
        params: recordOfPlayer,
        response: { 200: z.string() },
      },
    },
    async ({ params: { player, id } }, reply) => {
      // Refuses before the stream begins.
      await standingOf(keeping, player, id);
      return reply
        .type('text/event-stream; charset=utf-8')
        .send(Readable.from(told(keeping, player, id, closing.signal)));
    },
  );
}

/** Events, each the JSON of a standing. */
async function* told(keeping: Keeping, owner: string, id: string, closing: AbortSignal): AsyncGenerator<string> {
  let last = '';
  let since = performance.now();
  while (!closing.aborted) {
    const standing = await standingOf(keeping, owner, id);
    const json = JSON.stringify(standing);
    if (json !== last) yield `data: ${json}\n\n`;
    else if (performance.now() - since > SIGN_OF_LIFE_MS) yield ': still there\n\n';
    if (json !== last || performance.now() - since > SIGN_OF_LIFE_MS) since = performance.now();
    last = json;
    if (standing.state === 'done' || standing.state === 'failed') return;
    await wait(LOOKED_AT_MS, undefined, { signal: closing }).catch(() => undefined);
  }
}

/** A job that ended without leaving its record has failed, whatever the queue says; one that the queue has forgotten is judged by its record. */
async function standingOf({ store, queue }: Keeping, owner: string, id: string): Promise<Standing> {
  const errand = await get(store, owner, id);
  if (errand?.kind !== 'errand') throw notThere('errand');
  const { task } = (errand as StoredRecord<'errand'>).body;
  const job = await queue.find(task, id);
  const result = resultOf(id);
  const there = (await get(store, owner, result)) !== undefined;
  const progress = (await progressOf(store, id)) ?? { done: 0, total: 0 };
  const state = there ? 'done' : job === undefined || job.state === 'done' ? 'failed' : job.state;
  return { state, retry: job?.retry ?? 0, ...progress, ...(there ? { result } : {}) };
}
