import * as z from 'zod';
import { SHOT_COLUMNS } from '../shots.ts';
import { dateSchema, daySchema, nameSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  date: dateSchema,
  where: nameSchema.exactOptional(),
  purpose: z.enum(['range', 'gapping', 'course', 'practice']),
  ball: z.enum(['range', 'own']).exactOptional(),
  /** Bearing of the aim line. */
  bearingDeg: z.number().min(0).max(360).exactOptional(),
  altitudeM: z.number().min(-500).max(6000).exactOptional(),
  day: daySchema.exactOptional(),
  /** The file that the shots were read from, and what its headings were taken to mean. */
  source: z
    .strictObject({
      file: z.string().min(1).max(255),
      headings: z.array(z.string().max(200)).max(200),
      meanings: z.array(z.enum([...SHOT_COLUMNS, 'ignore'])).max(200),
      units: z.enum(['yd', 'm']),
    })
    .exactOptional(),
});

const form2 = form1.extend({
  /** What the line of aim is told by: "the white post". */
  target: nameSchema.exactOptional(),
  surface: z.enum(['mat', 'turf']).exactOptional(),
  /** A wind told from the line of aim, whose bearing need not be known: clockwise from it, so 0 is from ahead and 90 from the right. */
  lineWind: z
    .strictObject({ speedMps: z.number().min(0).max(60), fromDeg: z.number().min(0).max(360) })
    .exactOptional(),
});

/** Balls hit on one occasion. Its shots are records of their own that name it. */
export const sessionForms = [
  { schema: form1 },
  { schema: form2, upgrade: (before) => before },
] as const satisfies Forms;
export type Session = z.infer<typeof form2>;
