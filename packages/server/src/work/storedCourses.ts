import { type GroundFile, HOUSE, type Read, type StoredCourse } from '@leeway/contract';
import type { GivenFlag } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { currentIds, get, type Store } from '@leeway/store';

/** A course as it is listed. */
export interface ListedCourse {
  readonly id: string;
  readonly seq: number;
  readonly name: string;
  readonly attribution?: string;
  readonly file: string;
}

/** A course with its ground read. */
export interface ReadCourse {
  readonly name: string;
  readonly ground: GroundFile;
}

/** The courses of a store. A ground is megabytes and takes a moment to read, and never changes under its id: names are read once, and the last few grounds are held. */
export interface Courses {
  list(): Promise<readonly ListedCourse[]>;
  /** A course's ground; of one hole with a flag when these are said. Undefined when there is no such course. */
  read(id: string, only?: { readonly hole: string; readonly flag: GivenFlag }): Promise<Read<ReadCourse> | undefined>;
}

const GROUNDS_HELD = 4;

/** Without a store there are none. */
export function storedCourses(store: Store | undefined): Courses {
  if (store === undefined) return { list: () => Promise.resolve([]), read: () => Promise.resolve(undefined) };
  const names = new Map<string, Omit<ListedCourse, 'id' | 'seq'>>();
  const grounds = new Map<string, Read<ReadCourse>>();

  const bodyOf = async (id: string): Promise<StoredCourse | undefined> => {
    const record = await get(store, HOUSE, id);
    return record?.kind === 'course' ? (record.body as StoredCourse) : undefined;
  };
  const namesOf = async (id: string): Promise<Omit<ListedCourse, 'id' | 'seq'> | undefined> => {
    const there = names.get(id);
    if (there !== undefined) return there;
    const body = await bodyOf(id);
    if (body === undefined) return undefined;
    const { name, attribution, ground } = body;
    const read = { name, ...(attribution === undefined ? {} : { attribution }), file: ground.file };
    names.set(id, read);
    return read;
  };

  return {
    list: async () => {
      const listed: ListedCourse[] = [];
      for (const { id, seq } of await currentIds(store, { owner: HOUSE, kind: 'course' })) {
        const read = await namesOf(id);
        if (read !== undefined) listed.push({ id, seq, ...read });
      }
      return listed;
    },
    read: async (id, only) => {
      const held = only === undefined ? grounds.get(id) : undefined;
      if (held !== undefined) return held;
      const body = await bodyOf(id);
      if (body === undefined) return undefined;
      const { value, faults } = readGround(body.ground.text, body.ground.file, only ?? {});
      const read: Read<ReadCourse> =
        value === undefined ? { faults } : { value: { name: body.name, ground: named(value, body) }, faults };
      if (only !== undefined) return read;
      grounds.set(id, read);
      const [oldest] = grounds.keys();
      if (grounds.size > GROUNDS_HELD && oldest !== undefined) grounds.delete(oldest);
      return read;
    },
  };
}

/** The ground under the name and the attribution that it is kept with. */
const named = (ground: GroundFile, { name, attribution = ground.attribution }: StoredCourse): GroundFile => ({
  ...ground,
  course: name,
  ...(attribution === undefined ? {} : { attribution }),
});
