import * as z from 'zod';
import { SHOT_COLUMNS } from '../shots.ts';
import { idSchema, nameSchema } from './words.ts';
import type { Forms } from './shape.ts';

const readings = z.partialRecord(z.enum(SHOT_COLUMNS), z.union([z.number(), z.string().max(200)]));

const form1 = z.strictObject({
  session: idSchema,
  club: nameSchema,
  swing: nameSchema,
  /** Ball to pitch in a straight line, as measured that day. */
  carryM: z.number().min(0).max(500),
  /** To the right of the aim at the pitch. */
  sideM: z.number().min(-300).max(300).exactOptional(),
  /** Every other reading, SI and degrees for measures. */
  readings: readings.exactOptional(),
  /** The row as it stood in its file. */
  raw: z.strictObject({ line: z.int().min(1), cells: z.array(z.string().max(1000)).max(200) }).exactOptional(),
});

/** One ball. */
export const shotForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredShot = z.infer<typeof form1>;
