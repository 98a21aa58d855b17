import * as z from 'zod';
import { SHOT_COLUMNS } from '../shots.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  /** SHA-256 of the headings: what they say is not kept, since a file may name a player in them. */
  headings: z.string().regex(/^[0-9a-f]{64}$/),
  meanings: z.array(z.enum([...SHOT_COLUMNS, 'ignore'])).max(200),
  units: z.enum(['yd', 'm']),
});

/** How files of shots with these headings were read last, heading by heading. It belongs to the house. */
export const readingForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredReading = z.infer<typeof form1>;
