import * as z from 'zod';
import type { Forms } from './shape.ts';
import { dateSchema, idSchema } from './words.ts';

const form1 = z.discriminatedUnion('task', [
  /** Fit the patterns of all current shots. */
  z.strictObject({ task: z.literal('fit') }),
  z.strictObject({
    task: z.literal('plan'),
    /** The day that the plan is for. */
    date: dateSchema,
    course: idSchema,
    setUp: idSchema.exactOptional(),
    /** Patterns to plan with; the newest unless said. */
    fitted: idSchema.exactOptional(),
    /** Every hole unless said. */
    holes: z.array(z.string().min(1).max(8)).min(1).max(72).exactOptional(),
  }),
]);

const form2 = z.discriminatedUnion('task', [
  ...form1.options,
  /** Account for a round as its strokes stand. */
  z.strictObject({ task: z.literal('ledger'), round: idSchema }),
]);

/** Long work that was asked for. The job that does it holds this record's id alone. */
export const errandForms = [{ schema: form1 }, { schema: form2, upgrade: (before) => before }] as const satisfies Forms;
export type Errand = z.infer<typeof form2>;
