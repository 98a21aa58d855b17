import * as z from 'zod';
import { dateSchema, daySchema, idSchema, nameSchema, placeSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  course: idSchema,
  date: dateSchema,
  name: nameSchema.exactOptional(),
  flags: z.array(z.strictObject({ hole: z.string().min(1).max(8), at: placeSchema })).max(72),
  day: daySchema.exactOptional(),
  firmness: z.enum(['soft', 'normal', 'firm']).exactOptional(),
  /** Roll of a ball from the ramp on a level green. */
  greenSpeedM: z.number().min(0.5).max(6).exactOptional(),
});

/** How a course is set up on a day. It belongs to the house. */
export const setUpForms = [{ schema: form1 }] as const satisfies Forms;
export type SetUp = z.infer<typeof form1>;
