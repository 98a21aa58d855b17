import { courseListSchema, idSchema, sentHole, type ShelvedGround } from '@leeway/contract';
import { parseFlag } from '@leeway/formats';
import * as z from 'zod';
import { notThere } from '../refusal.ts';
import type { Courses } from '../work/storedCourses.ts';
import { orRefuse } from './kept.ts';
import type { Api } from './route.ts';

/** The list of courses, and their holes read and ready to be opened. */
export function courseRoutes(api: Api, courses: Courses): void {
  const tags = ['courses'];
  api.get(
    '/api/courses',
    { schema: { tags, summary: 'All courses, without their ground', response: { 200: courseListSchema } } },
    async () => ({ courses: await courses.list() }),
  );
  api.get(
    '/api/courses/:id/holes/:hole',
    {
      schema: {
        tags,
        summary: 'A hole as it is opened: its ground read, with the flag where it is said to be',
        params: z.strictObject({ id: idSchema, hole: z.string().min(1).max(40) }),
        querystring: z.strictObject({
          /** `16,7R` in paces on from the front and in from a side, or LON,LAT. */
          flag: z.string().max(80).optional(),
        }),
        response: { 200: z.unknown() },
      },
    },
    async ({ params: { id, hole }, query }) => {
      const flag = query.flag === undefined ? undefined : orRefuse(parseFlag(query.flag));
      const read = await courses.read(id, flag === undefined ? undefined : { hole, flag });
      if (read === undefined) throw notThere('course');
      const { ground } = orRefuse(read);
      const found = ground.holes.find((h) => h.hole === hole);
      if (found === undefined) throw notThere('hole');
      return sentHole(ground, found);
    },
  );
}

/** A stored course as the page lists it; undefined when its ground cannot be read. */
export async function shelvedCourse(courses: Courses, id: string): Promise<ShelvedGround | undefined> {
  const { name, ground } = (await courses.read(id))?.value ?? {};
  if (name === undefined || ground === undefined || ground.holes.length === 0) return undefined;
  const holes = ground.holes.map(({ hole, name: called, par }) => ({
    hole,
    ...(called === undefined ? {} : { name: called }),
    par,
    url: `/api/courses/${id}/holes/${encodeURIComponent(hole)}`,
  }));
  return { id, course: name, kept: true, holes, prepared: [] };
}
