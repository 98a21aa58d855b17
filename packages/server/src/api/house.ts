import { backupSchema, courseListSchema, HOUSE, type StoredCourse } from '@leeway/contract';
import { backUp, currentIds, get } from '@leeway/store';
import { basename, join } from 'node:path';
import { notThere } from '../refusal.ts';
import { orRefuse, type Keeping } from './kept.ts';
import type { Api } from './route.ts';

interface CourseNames {
  readonly name: string;
  readonly attribution?: string;
  readonly file: string;
}
type ListedCourse = CourseNames & { readonly id: string; readonly seq: number };

/** What belongs to no player: the list of courses, and backups of everything. */
export function houseRoutes(api: Api, { store, backups }: Keeping): void {
  /** A ground is megabytes and never changes under its id: its names are read once. */
  const known = new Map<string, CourseNames>();
  const namesOf = async (id: string): Promise<CourseNames> => {
    const there = known.get(id);
    if (there !== undefined) return there;
    const record = await get(store, HOUSE, id);
    if (record === undefined) throw notThere('course');
    const { name, attribution, ground } = record.body as StoredCourse;
    const names = { name, ...(attribution === undefined ? {} : { attribution }), file: ground.file };
    known.set(id, names);
    return names;
  };
  api.get(
    '/api/courses',
    { schema: { tags: ['house'], summary: 'All courses, without their ground', response: { 200: courseListSchema } } },
    async () => {
      const courses: ListedCourse[] = [];
      for (const { id, seq } of await currentIds(store, { owner: HOUSE, kind: 'course' }))
        courses.push({ id, seq, ...(await namesOf(id)) });
      return { courses };
    },
  );
  api.post(
    '/api/backups',
    {
      schema: {
        tags: ['house'],
        summary: 'Write a backup into the folder of backups',
        response: { 200: backupSchema },
      },
    },
    async () => {
      const path = join(backups, `${new Date().toISOString().replaceAll(':', '')}.backup`);
      const { records } = orRefuse(await backUp(store, path));
      return { file: basename(path), records };
    },
  );
}
