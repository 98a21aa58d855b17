import {
  changesSchema,
  HOUSE,
  idSchema,
  keptRecordsOf,
  keptRecordsSchema,
  type Kind,
  KINDS,
  MOST_RECORDS,
  receiptsSchema,
  sentRecordsOf,
  sentRecordsSchema,
} from '@leeway/contract';
import { changesAfter, current, history, list, put, type Store } from '@leeway/store';
import * as z from 'zod';
import { notThere } from '../refusal.ts';
import { orRefuse, type Keeping } from './kept.ts';
import { HOUSE_PATHS, ofHouse, ofPlayer, PLAYER_PATHS, recordOfHouse, recordOfPlayer } from './paths.ts';
import type { Api } from './route.ts';

/** Two thousand shots with their rows are under 1 MB. */
const MOST_BYTES = 16 * 2 ** 20;

const asked = z.strictObject({
  /** Only what was stored after this number. */
  after: z.coerce.number().int().min(0).default(0),
  most: z.coerce.number().int().min(1).max(MOST_RECORDS).default(MOST_RECORDS),
  /** Superseded ones too. */
  all: z.enum(['true', 'false']).default('false'),
});

/** A player's and the house's records by their kinds, and what a phone brings and asks for. */
export function recordRoutes(api: Api, { store }: Keeping): void {
  for (const [path, kind] of Object.entries(PLAYER_PATHS)) {
    kindRoutes(api, store, kind, {
      tags: ['records of a player'],
      url: `/api/players/:player/${path}`,
      list: ofPlayer,
      one: recordOfPlayer,
    });
  }
  for (const [path, kind] of Object.entries(HOUSE_PATHS)) {
    kindRoutes(api, store, kind, {
      tags: ['records of the house'],
      url: `/api/house/${path}`,
      list: ofHouse,
      one: recordOfHouse,
    });
  }
  api.post(
    '/api/records',
    {
      bodyLimit: MOST_BYTES,
      schema: {
        tags: ['phone'],
        summary: 'Store records of any kinds and forms, all or none; sending them again is harmless',
        body: sentRecordsSchema,
        response: { 200: receiptsSchema },
      },
    },
    async ({ body }) => ({ receipts: orRefuse(await put(store, body.records)) }),
  );
  api.get(
    '/api/changes',
    {
      schema: {
        tags: ['phone'],
        summary: 'What happened to some owners’ records after a number, and who was erased',
        querystring: z.strictObject({
          after: z.coerce.number().int().min(0).default(0),
          /** Ids with commas between. */
          owners: z
            .string()
            .transform((text) => text.split(','))
            .pipe(z.array(idSchema).min(1).max(500)),
          most: z.coerce.number().int().min(1).max(MOST_RECORDS).default(1000),
        }),
        response: { 200: changesSchema },
      },
    },
    async ({ query: { after, owners, most } }) => ({
      store: store.id,
      ...(await changesAfter(store, after, owners, most)),
    }),
  );
}

interface KindPlace {
  readonly tags: readonly string[];
  readonly url: string;
  readonly list: z.ZodType<{ readonly player?: string }>;
  readonly one: z.ZodType<{ readonly player?: string; readonly id: string }>;
}

function kindRoutes(api: Api, store: Store, kind: Kind, { tags, url, list: ofOwner, one }: KindPlace): void {
  api.get(
    url,
    {
      schema: {
        tags,
        summary: `The ${kind} records that stand, in the order in which they were stored`,
        params: ofOwner,
        querystring: asked,
        response: { 200: keptRecordsOf(kind) },
      },
    },
    async ({ params, query: { after, most, all } }) => {
      const read = all === 'true' ? list : current;
      return { records: await read(store, { owner: params.player ?? HOUSE, kind, after, most }) };
    },
  );
  api.get(
    `${url}/:id`,
    {
      schema: {
        tags,
        summary: `A ${kind} record with all that it corrects and all that corrects it`,
        params: one,
        response: { 200: keptRecordsSchema },
      },
    },
    async ({ params }) => {
      const records = await history(store, params.player ?? HOUSE, params.id);
      if (!records.some((record) => record.id === params.id && record.kind === kind)) throw notThere(kind);
      return { records };
    },
  );
  api.post(
    url,
    {
      bodyLimit: MOST_BYTES,
      schema: {
        tags,
        summary: `Store ${kind} records, all or none; a correction supersedes`,
        params: ofOwner,
        body: sentRecordsOf(kind),
        response: { 200: receiptsSchema },
      },
    },
    async ({ params, body }) => {
      const version = KINDS[kind].forms.length;
      const records = body.records.map((record) => ({ ...record, owner: params.player ?? HOUSE, kind, version }));
      return { receipts: orRefuse(await put(store, records)) };
    },
  );
}
