import {
  erasedSchema,
  erasureSchema,
  type LadderData,
  ladderSchema,
  MISHIT,
  playerSchema,
  playerListSchema,
} from '@leeway/contract';
import { current, erasePlayer, exportPlayer, importPlayer, playerList, type Store } from '@leeway/store';
import * as z from 'zod';
import { receiptsSchema } from '@leeway/contract';
import { notThere, refusal } from '../refusal.ts';
import { csvOf } from '../csv.ts';
import { storedPlayer } from '../work/storedPlayer.ts';
import { sessionsOf, standingShots } from '../work/standingShots.ts';
import { orRefuse, type Keeping } from './kept.ts';
import { ofPlayer } from './paths.ts';
import type { Api } from './route.ts';

const MOST_RECORD_BYTES = 64 * 2 ** 20;

/** The list of players, one player's ladder, whole record and erasure. */
export function playerRoutes(api: Api, { store }: Keeping): void {
  const tags = ['players'];
  api.get(
    '/api/players',
    { schema: { tags, summary: 'All players, with what changed last', response: { 200: playerListSchema } } },
    async () => ({ players: await playerList(store) }),
  );
  api.get(
    '/api/players/:player/ladder',
    {
      schema: {
        tags,
        summary: 'What a ladder of carries is drawn from',
        params: ofPlayer,
        response: { 200: ladderSchema },
      },
    },
    ({ params }) => ladderOf(store, params.player),
  );
  api.get(
    '/api/players/:player/file',
    {
      schema: {
        tags,
        summary: 'The player as a Player file: the profile with the newest patterns, ready to plan with',
        params: ofPlayer,
        response: { 200: playerSchema },
      },
    },
    async ({ params }) => {
      const stored = await storedPlayer(store, params.player);
      if (stored === undefined) throw notThere('player');
      return stored.file;
    },
  );
  api.get(
    '/api/players/:player/balls',
    {
      schema: {
        tags,
        summary: 'Every ball that counts',
        params: ofPlayer,
        response: { 200: ladderSchema.shape.balls },
      },
    },
    async ({ params }) => (await ladderOf(store, params.player)).balls,
  );
  api.get(
    '/api/players/:player/record',
    {
      schema: {
        tags,
        summary: 'The player’s whole record as one file',
        params: ofPlayer,
        response: { 200: z.string() },
      },
    },
    async ({ params }, reply) => {
      const text = await exportPlayer(store, params.player);
      if (text === undefined) throw notThere('player');
      return reply
        .header('content-disposition', `attachment; filename="player-${params.player}.json"`)
        .type('application/json; charset=utf-8')
        .send(text);
    },
  );
  api.get(
    '/api/players/:player/shots.csv',
    { schema: { tags, summary: 'Every current ball as a table', params: ofPlayer, response: { 200: z.string() } } },
    async ({ params }, reply) => {
      const { balls } = await ladderOf(store, params.player);
      const rows = balls.map(({ date, club, swing, carryM, sideM }) => [date ?? '', club, swing, carryM, sideM ?? '']);
      return reply
        .header('content-disposition', `attachment; filename="shots-${params.player}.csv"`)
        .type('text/csv; charset=utf-8')
        .send(csvOf(['date', 'club', 'swing', 'carry (m)', 'side (m)'], rows));
    },
  );
  api.post(
    '/api/players/records',
    {
      bodyLimit: MOST_RECORD_BYTES,
      schema: {
        tags,
        summary: 'Take in a file of one player’s whole record',
        body: z.instanceof(Uint8Array),
        response: { 200: receiptsSchema },
      },
    },
    async ({ body }) => ({
      receipts: orRefuse(await importPlayer(store, Buffer.from(body).toString('utf8'), 'the file')),
    }),
  );
  api.post(
    '/api/players/:player/erasure',
    {
      schema: {
        tags,
        summary: 'Erase a player for good; the name says that this one is meant',
        params: ofPlayer,
        body: erasureSchema,
        response: { 200: erasedSchema },
      },
    },
    async ({ params: { player }, body }) => {
      const profiles = await current(store, { owner: player, kind: 'profile' });
      if (profiles.length === 0) throw notThere('player');
      if (!profiles.some((profile) => profile.body.name === body.name))
        throw refusal(
          409,
          'other-name',
          'erasure',
          'another name than the player’s',
          'the player’s name as it is kept',
        );
      return orRefuse(await erasePlayer(store, player));
    },
  );
}

/** The newest fit, and every current ball. A fit is up to date while nothing it was made from has changed. */
async function ladderOf(store: Store, owner: string): Promise<LadderData> {
  const [profile] = (await current(store, { owner, kind: 'profile' })).slice(-1);
  if (profile === undefined) throw notThere('player');
  const standing = await standingShots(store, owner);
  const { sessions, shots, approaches } = standing;
  const [fit] = (await current(store, { owner, kind: 'fitted' })).slice(-1);
  const used = new Set(fit?.body.from.shots ?? []);
  const told = new Set(fit?.body.from.sessions ?? []);
  const same =
    used.size === shots.length + approaches.length &&
    [...shots, ...approaches].every(({ id }) => used.has(id)) &&
    sessionsOf(standing).every((id) => told.has(id));
  return {
    fitted:
      fit === undefined
        ? null
        : {
            id: fit.id,
            seq: fit.seq,
            upToDate: same && fit.body.from.profile === profile.id,
            ...(fit.body.ladder === undefined ? {} : { ladder: fit.body.ladder }),
          },
    balls: shots.map(({ id, body: { session, club, swing, carryM, sideM, readings } }) => {
      const date = sessions.get(session)?.body.date;
      return {
        id,
        session,
        ...(date === undefined ? {} : { date }),
        club,
        swing,
        carryM,
        ...(sideM === undefined ? {} : { sideM }),
        ...(readings?.strike === MISHIT ? { mishit: true as const } : {}),
      };
    }),
  };
}
