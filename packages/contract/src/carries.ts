import * as z from 'zod';

/** Version of the carries document; it rises when a field changes its meaning or goes. */
export const CARRIES_VERSION = 1;

const interval = z.strictObject({ mean: z.number(), lo80: z.number(), hi80: z.number() });

const counted = interval.extend({ n: z.int().min(0) });

/** What `leeway carries --json` prints. Metres and degrees on the reference day; intervals are credible intervals of the good strike's mean. */
export const carriesSchema = z.strictObject({
  version: z.literal(CARRIES_VERSION),
  entries: z.array(
    z.strictObject({
      club: z.string(),
      swing: z.string(),
      n: z.int().min(0),
      carryM: interval.extend({
        se: z.number().min(0),
        lo50: z.number(),
        hi50: z.number(),
        lo95: z.number(),
        hi95: z.number(),
      }),
      sideM: z.strictObject({ mean: z.number(), se: z.number().min(0) }),
      sdAlongM: interval,
      directionSdDeg: interval,
      mishitShare: interval,
      allBallsMeanM: z.number(),
      eightInTenCarryM: z.number(),
      claimedM: z.number().optional(),
      ballsNeeded: z.strictObject({ withinM: z.number().positive(), balls: z.int().min(0) }).nullable(),
    }),
  ),
  gaps: z.array(
    z.strictObject({ fromM: z.number(), toM: z.number(), missingM: z.number(), ways: z.array(z.string()) }),
  ),
  /** What range and course say alone, of swings hit on both. */
  apart: z.array(z.strictObject({ club: z.string(), swing: z.string(), rangeM: counted, courseM: counted })).optional(),
  /** How far a range ball goes of the own ball, where range balls were hit. */
  rangeBallFactor: interval.optional(),
  /** Days of balls: how far they went of what the player's own ball goes now. */
  days: z
    .array(z.strictObject({ ageDays: z.number().min(0), rangeBall: z.boolean(), balls: z.int(), ofNow: interval }))
    .optional(),
  faults: z.array(
    z.strictObject({
      code: z.string(),
      level: z.enum(['refused', 'left out', 'note']),
      file: z.string(),
      line: z.int().optional(),
      column: z.int().optional(),
      at: z.string().optional(),
      found: z.string(),
      expected: z.string(),
      done: z.string().optional(),
    }),
  ),
});
export type CarriesDocument = z.infer<typeof carriesSchema>;

export const carriesJsonSchema = (): object => ({ title: 'Carries', ...z.toJSONSchema(carriesSchema) });
