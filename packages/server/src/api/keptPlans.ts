import { type FrozenPlan, type KeptPlan, keptPlansSchema, type StoredRecord } from '@leeway/contract';
import { current } from '@leeway/store';
import * as z from 'zod';
import type { Keeping } from './kept.ts';
import { ofPlayer } from './paths.ts';
import type { Api } from './route.ts';

/** A player's kept plans in short. */
export function keptPlanRoutes(api: Api, { store }: Keeping): void {
  api.get(
    '/api/players/:player/kept-plans',
    {
      schema: {
        tags: ['players'],
        summary: 'The plans that are kept, in short: of a course, and of one of its holes, when these are said',
        params: ofPlayer,
        querystring: z.strictObject({ course: z.string().exactOptional(), hole: z.string().exactOptional() }),
        response: { 200: keptPlansSchema },
      },
    },
    async ({ params, query: { course, hole } }) => {
      const plans = (await current(store, { owner: params.player, kind: 'plan' })).map((record) =>
        inShort(record as StoredRecord<'plan'>),
      );
      return {
        plans: plans.filter(
          (plan) =>
            (course === undefined || plan.course === course) &&
            (hole === undefined || plan.holes.some((planned) => planned.hole === hole)),
        ),
      };
    },
  );
}

function inShort({ id, madeAt, body }: Pick<StoredRecord<'plan'>, 'id' | 'madeAt' | 'body'>): KeptPlan {
  const { date, plan, own, lines }: FrozenPlan = body;
  const { course, day, round, holes } = plan;
  return {
    id,
    madeAt,
    date,
    ...(course === undefined ? {} : { course }),
    day,
    ...(round === undefined ? {} : { round }),
    holes: holes.map(({ hole, par, expectedStrokes, shots: [first] }) => ({
      hole,
      par,
      expectedStrokes,
      ...(first?.scores === undefined ? {} : { scores: first.scores }),
    })),
    ...(own === undefined ? {} : { own }),
    ...(lines === undefined ? {} : { lines }),
  };
}
