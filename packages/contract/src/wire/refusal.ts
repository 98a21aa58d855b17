import * as z from 'zod';

export const faultSchema = z.strictObject({
  code: z.string(),
  level: z.enum(['refused', 'left out', 'note']),
  file: z.string(),
  line: z.int().exactOptional(),
  column: z.int().exactOptional(),
  at: z.string().exactOptional(),
  found: z.string(),
  expected: z.string(),
  done: z.string().exactOptional(),
});

/** Why a request was not done: the body of every answer from 400 on. */
export const refusalSchema = z.strictObject({ faults: z.array(faultSchema).min(1) });
