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

/** Long work that was asked for. The job that does it holds this record's id alone. */
export const errandForms = [{ schema: form1 }] as const satisfies Forms;
export type Errand = z.infer<typeof form1>;
