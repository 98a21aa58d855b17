import * as z from 'zod';
import { planSchema } from '../plan.ts';
import { dateSchema, idSchema } from './words.ts';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({
  /** The day that the plan is for. */
  date: dateSchema,
  course: idSchema.exactOptional(),
  setUp: idSchema.exactOptional(),
  fitted: idSchema.exactOptional(),
  plan: planSchema,
});

const hole = z.string().min(1).max(8);

/** A stroke that the coach or player chose for one shot of the plan, whatever the plan says, and why. */
const ownChoiceSchema = z.strictObject({
  hole,
  /** The shot of the plan, from 0. */
  shot: z.int().min(0).max(20),
  option: z.strictObject({ club: z.string().min(1).max(40), swing: z.string().min(1).max(40) }),
  /** Where its good strike finishes. */
  spot: z.strictObject({ lon: z.number().min(-180).max(180), lat: z.number().min(-90).max(90) }),
  expectedStrokes: z.number().positive(),
  costsMore: z.number(),
  reason: z.string().trim().min(1).max(400),
});

const form2 = form1.extend({
  own: ownChoiceSchema.exactOptional(),
  /** A line a hole, as a coach writes it on the card. */
  lines: z
    .array(z.strictObject({ hole, line: z.string().min(1).max(300) }))
    .max(72)
    .exactOptional(),
});

/** A plan as it was made. It is never corrected, so that what was foretold can be held against what happened; it can be taken away. */
export const frozenPlanForms = [
  { schema: form1 },
  { schema: form2, upgrade: (before) => before },
] as const satisfies Forms;
export type FrozenPlan = z.infer<typeof form2>;
export type OwnChoice = z.infer<typeof ownChoiceSchema>;
