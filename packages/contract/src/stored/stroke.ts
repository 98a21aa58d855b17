import { LIES } from '@leeway/engine';
import * as z from 'zod';
import { idSchema, nameSchema, placeSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  round: idSchema,
  hole: z.string().min(1).max(8),
  /** The number of the stroke on the hole, from 1. */
  shot: z.int().min(1).max(99),
  from: placeSchema.exactOptional(),
  lie: z.enum([...LIES, 'green']).exactOptional(),
  club: nameSchema.exactOptional(),
  swing: nameSchema.exactOptional(),
  aim: placeSchema.exactOptional(),
  finish: placeSchema.exactOptional(),
  holed: z.literal(true).exactOptional(),
  strike: z.string().min(1).max(40).exactOptional(),
  penaltyStrokes: z.int().min(0).max(2).exactOptional(),
});

/** One stroke of a round. */
export const strokeForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredStroke = z.infer<typeof form1>;
