import * as z from 'zod';
import { dateSchema, daySchema, idSchema, nameSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  date: dateSchema,
  course: idSchema.exactOptional(),
  setUp: idSchema.exactOptional(),
  plan: idSchema.exactOptional(),
  tees: nameSchema.exactOptional(),
  day: daySchema.exactOptional(),
});

/** A round played. Its strokes are records of their own that name it. */
export const roundForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredRound = z.infer<typeof form1>;
