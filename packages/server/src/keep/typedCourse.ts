import {
  type Fault,
  HOUSE,
  newRecord,
  type Read,
  sentHole,
  type SentHole,
  type StoredCourse,
  type typedCourseSchema,
} from '@leeway/contract';
import { courseByNumbers, numbersFaults, numbersIn, readGround } from '@leeway/formats';
import { get, put, type Store } from '@leeway/store';
import { randomUUID } from 'node:crypto';
import type * as z from 'zod';

/** Stands wherever ground from numbers is shown. */
const TYPED = 'From numbers that were typed, not from a map: shapes are the usual ones.';

type Asked = z.infer<typeof typedCourseSchema>;

export interface TypedCourse {
  readonly faults: readonly Fault[];
  readonly last?: SentHole;
  readonly kept?: string;
}

/** Makes a course of typed holes, and keeps it when that is asked: a new one, or in place of the one that stands. Faults stand in the answer. */
export async function typedCourse(store: Store, { name, course, holes, keep }: Asked): Promise<Read<TypedCourse>> {
  const wrong = numbersFaults(holes);
  if (wrong.length > 0) return { value: { faults: wrong }, faults: [] };
  const text = courseByNumbers(holes);
  const { value, faults } = readGround(text, 'numbers');
  const ground = value?.holes.find(({ hole }) => hole === holes.at(-1)?.hole);
  if (value === undefined || ground === undefined) return { value: { faults }, faults: [] };
  const last = sentHole({ ...value, course: name, attribution: TYPED }, ground);
  if (!keep) return { value: { faults, last }, faults: [] };
  const before = course === undefined ? undefined : await get(store, HOUSE, course);
  if (course !== undefined && !isTyped(before?.body)) return { faults: [notTyped] };
  const id = randomUUID();
  const body = { name, ground: { file: 'numbers.geojson', text }, attribution: TYPED };
  const superseding = course === undefined ? {} : { supersedes: course };
  const record = newRecord('course', { owner: HOUSE, id, madeAt: new Date().toISOString(), ...superseding, body });
  const stored = await put(store, [record]);
  if (stored.value === undefined) return { faults: stored.faults };
  return { value: { faults, last, kept: id }, faults: [] };
}

const isTyped = (body: unknown): boolean =>
  numbersIn((body as StoredCourse | undefined)?.ground?.text ?? '') !== undefined;

const notTyped: Fault = {
  code: 'not-typed',
  level: 'refused',
  file: 'numbers',
  found: 'a course that was not typed',
  expected: 'one that was, or none',
};
