import * as z from 'zod';
import { dateSchema, nameSchema } from './words.ts';
import type { Forms } from './shape.ts';

const depth = z.number().min(5).max(400);
const width = z.number().min(0).max(80);

const form1 = z.strictObject({
  date: dateSchema,
  club: nameSchema,
  swing: nameSchema,
  toFlagM: depth,
  /** Where the green begins and ends on the line to the flag, from the ball, and how far it reaches to either side of that line. */
  green: z
    .strictObject({ frontM: depth, backM: depth, leftM: width, rightM: width })
    .refine(({ frontM, backM }) => frontM < backM, 'a green that ends behind where it begins'),
  /** Where the mark of its pitch was found, beyond and right of the flag; or on which side of the green it came down. */
  found: z.union([
    z.strictObject({ beyondFlagM: z.number().min(-80).max(80), rightOfFlagM: z.number().min(-80).max(80) }),
    z.strictObject({ missed: z.enum(['short', 'long', 'left', 'right', 'away']) }),
  ]),
});

/** An approach to a green, and where it was found to have come down. */
export const approachForms = [{ schema: form1 }] as const satisfies Forms;
export type Approach = z.infer<typeof form1>;
