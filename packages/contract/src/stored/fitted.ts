import * as z from 'zod';
import { carriesSchema } from '../carries.ts';
import { patternSchema } from '../player.ts';
import { idSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  /** On the reference day. */
  patterns: z.array(patternSchema).min(1).max(600),
  from: z.strictObject({
    /** The profile that the priors were taken from. */
    profile: idSchema.exactOptional(),
    sessions: z.array(idSchema).max(5000),
    /** Shots and approaches that were used. */
    shots: z.array(idSchema).max(50_000),
    model: z.string().min(1).max(80),
  }),
});

const form2 = form1.extend({
  /** The ladder of carries that came out of the same fit. */
  ladder: carriesSchema.pick({ entries: true, gaps: true }).exactOptional(),
});

/** Patterns as they were fitted, and what they were fitted from. */
export const fittedForms = [{ schema: form1 }, { schema: form2, upgrade: (before) => before }] as const satisfies Forms;
export type FittedPatterns = z.infer<typeof form2>;
