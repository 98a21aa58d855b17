import * as z from 'zod';
import { planSchema } from '../plan.ts';
import { frozenPlanForms } from '../stored/frozenPlan.ts';
import { dateSchema, idSchema } from '../stored/words.ts';

const { own, lines } = frozenPlanForms[1].schema.shape;
const { round, holes, day } = planSchema.shape;
const { hole, par, expectedStrokes } = holes.element.shape;

/** Kept plans in short, the newest last: a whole plan of a round is a hundred times as long. */
export const keptPlansSchema = z.strictObject({
  plans: z.array(
    z.strictObject({
      id: idSchema,
      madeAt: z.iso.datetime({ offset: true }),
      date: dateSchema,
      course: z.string().exactOptional(),
      day,
      round,
      holes: z.array(
        z.strictObject({ hole, par, expectedStrokes, scores: holes.element.shape.shots.element.shape.scores }),
      ),
      own,
      lines,
    }),
  ),
});
export type KeptPlan = z.infer<typeof keptPlansSchema>['plans'][number];
