import * as z from 'zod';
import { idSchema } from '../stored/words.ts';

/** How long work stands. */
export const standingSchema = z.strictObject({
  state: z.enum(['waiting', 'running', 'done', 'failed']),
  /** 1 when it is run again after a worker was lost. */
  retry: z.int().min(0),
  done: z.int().min(0),
  /** 0 before it is known. */
  total: z.int().min(0),
  /** The record that came of it. */
  result: idSchema.exactOptional(),
});
export type Standing = z.infer<typeof standingSchema>;
