import {
  GROUND_CAPS,
  dateSchema,
  groundFileSchema,
  playerFileKeptSchema,
  shotFileReadingSchema,
  shotFileSchema,
} from '@leeway/contract';
import * as z from 'zod';
import { keepGroundFile, readGroundFile } from '../keep/groundFile.ts';
import { keepPlayerFile } from '../keep/playerFile.ts';
import { keepShotFile, readShotFile } from '../keep/shotFile.ts';
import { refusal } from '../refusal.ts';
import { orRefuse, type Keeping } from './kept.ts';
import { ofHouse, ofPlayer } from './paths.ts';
import type { Api } from './route.ts';

const MOST_SHOT_BYTES = 32e6;
const MOST_PLAYER_BYTES = 16e6;
/** Uploads taken at once: with the caps, what a hundred clients at a time can fill. */
const AT_ONCE = 4;

const bytes = z.instanceof(Uint8Array);
const name = z.string().min(1).max(255);
/** What `seen` was when the file was looked at: keeps it. */
const approve = z.string().min(1).max(64).optional();

/** A reading as JSON in the address. */
const reading = z
  .string()
  .transform((text, context) => {
    try {
      return JSON.parse(text) as unknown;
    } catch {
      context.addIssue({ code: 'custom', message: 'JSON' });
      return z.NEVER;
    }
  })
  .pipe(shotFileReadingSchema)
  .optional();

/** Files of shots and of ground: looked at first, kept when they are approved. Nothing of them is written anywhere before. */
export function fileRoutes(api: Api, { store }: Keeping): void {
  const tags = ['files'];
  const consumes = ['application/octet-stream'];
  let taken = 0;
  const oneAtATime = {
    onRequest: (_: unknown, __: unknown, done: (error?: Error) => void) => {
      if (taken >= AT_ONCE)
        return done(refusal(503, 'busy', 'upload', `${AT_ONCE} uploads under way`, 'to be sent again in a moment'));
      taken++;
      done();
    },
    onResponse: (_: unknown, reply: { readonly statusCode: number }, done: () => void) => {
      if (reply.statusCode !== 503) taken--;
      done();
    },
  };

  api.post(
    '/api/players/:player/shot-files',
    {
      ...oneAtATime,
      bodyLimit: MOST_SHOT_BYTES,
      schema: {
        tags,
        consumes,
        summary: 'Read a file of shots, to be looked at; sent again with what was seen, it is kept',
        params: ofPlayer,
        querystring: z.strictObject({
          name,
          /** Of rows without a date that can be read. */
          date: dateSchema,
          purpose: z.enum(['range', 'gapping', 'course', 'practice']).default('range'),
          ball: z.enum(['range', 'own']).optional(),
          units: z.enum(['yd', 'm']).default('yd'),
          reading,
          approve,
        }),
        body: bytes,
        response: { 200: shotFileSchema },
      },
    },
    async ({ params, query, body }) => {
      const { name: file, date, purpose, ball, units, reading: how, approve: seen } = query;
      const asked = {
        owner: params.player,
        file,
        bytes: body,
        date,
        purpose,
        units,
        ...(ball === undefined ? {} : { ball }),
        ...(how === undefined ? {} : { reading: how }),
      };
      return orRefuse(seen === undefined ? await readShotFile(store, asked) : await keepShotFile(store, asked, seen));
    },
  );
  api.post(
    '/api/courses/files',
    {
      ...oneAtATime,
      bodyLimit: GROUND_CAPS.characters,
      schema: {
        tags,
        consumes,
        summary: 'Read a ground file, to be looked at; sent again with what was seen, it is kept as a course',
        params: ofHouse,
        querystring: z.strictObject({ name, approve }),
        body: bytes,
        response: { 200: groundFileSchema },
      },
    },
    async ({ query: { name: file, approve: seen }, body }) => {
      if (seen !== undefined) return orRefuse(await keepGroundFile(store, body, file, seen));
      const { text: _, ...shown } = orRefuse(readGroundFile(body, file));
      return shown;
    },
  );
  api.post(
    '/api/players/files',
    {
      ...oneAtATime,
      bodyLimit: MOST_PLAYER_BYTES,
      schema: {
        tags,
        consumes,
        summary: 'Take in a Player file as a new player',
        querystring: z.strictObject({ name }),
        body: bytes,
        response: { 200: playerFileKeptSchema },
      },
    },
    async ({ query, body }) => orRefuse(await keepPlayerFile(store, body, query.name)),
  );
}
