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

/** A plan as it was made. It is never superseded, so that what was foretold can be held against what happened. */
export const frozenPlanForms = [{ schema: form1 }] as const satisfies Forms;
export type FrozenPlan = z.infer<typeof form1>;
