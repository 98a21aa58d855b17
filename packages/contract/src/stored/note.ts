import * as z from 'zod';
import { dateSchema, idSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  date: dateSchema,
  text: z.string().min(1).max(20_000),
  /** The record that it is about. */
  about: idSchema.exactOptional(),
});

/** A coach's or a player's note. */
export const noteForms = [{ schema: form1 }] as const satisfies Forms;
export type Note = z.infer<typeof form1>;
