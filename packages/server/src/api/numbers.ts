import { HOUSE, type StoredCourse, typedCourseReadSchema, typedCourseSchema } from '@leeway/contract';
import { numbersIn } from '@leeway/formats';
import { get } from '@leeway/store';
import * as z from 'zod';
import { typedCourse } from '../keep/typedCourse.ts';
import { notThere } from '../refusal.ts';
import { orRefuse, type Keeping } from './kept.ts';
import { recordOfHouse } from './paths.ts';
import type { Api } from './route.ts';

/** Holes by numbers: looked at while they are typed, and kept as a course. */
export function numbersRoutes(api: Api, { store }: Keeping): void {
  const tags = ['plan'];
  api.post(
    '/api/courses/numbers',
    {
      schema: {
        tags,
        summary: 'Make a course of holes by numbers, to be looked at or kept',
        body: typedCourseSchema,
        response: { 200: typedCourseReadSchema },
      },
    },
    async ({ body }) => orRefuse(await typedCourse(store, body)),
  );
  api.get(
    '/api/courses/:id/numbers',
    {
      schema: {
        tags,
        summary: 'The numbers of a course that was typed; none of any other',
        params: recordOfHouse,
        response: { 200: z.strictObject({ holes: z.array(z.unknown()) }) },
      },
    },
    async ({ params: { id } }) => {
      const record = await get(store, HOUSE, id);
      if (record?.kind !== 'course') throw notThere('course');
      return { holes: [...(numbersIn((record.body as StoredCourse).ground.text) ?? [])] };
    },
  );
}
