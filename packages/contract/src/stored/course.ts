import * as z from 'zod';
import { GROUND_CAPS } from '../ground.ts';
import { nameSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  name: nameSchema,
  /** The ground file as it came. */
  ground: z.strictObject({
    file: z.string().min(1).max(255),
    text: z.string().min(1).max(GROUND_CAPS.characters),
  }),
  /** The line that must stand wherever the map, or what was made from it, is shown. */
  attribution: z.string().max(500).exactOptional(),
});

/** A course. It belongs to the house, not to a player. */
export const courseForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredCourse = z.infer<typeof form1>;
