import * as z from 'zod';
import { faultSchema } from './wire/refusal.ts';
import { idSchema, nameSchema } from './stored/words.ts';

const between = (least: number, most: number): z.ZodNumber => z.number().min(least).max(most);

/** A hazard as a card of yardages tells it: along the line of play from where it is reached to where it is carried, and off to a side. */
const hazard = z.strictObject({
  kind: z.enum(['sand', 'water', 'trees', 'out']),
  reachM: between(0, 900),
  carryM: between(0, 900),
  side: z.enum(['left', 'right', 'across']),
  /** From the line of play to its nearer edge. */
  offM: between(0, 120).exactOptional(),
  name: nameSchema.exactOptional(),
});

/** A hole by numbers. Lengths are along the line of play, from the tee to the middle of the green; angles are clockwise. */
export const holeNumbersSchema = z.strictObject({
  hole: z.string().regex(/^[1-9]\d?[A-Z]?$/),
  name: nameSchema.exactOptional(),
  par: z.int().min(3).max(6).exactOptional(),
  lengthM: between(25, 900),
  /** The bearing of the tee shot, from true north; what the wind is told from. */
  bearingDeg: between(0, 360).exactOptional(),
  /** Where the line of play turns, and by how much; left is negative. */
  turn: z.strictObject({ atM: between(10, 890), byDeg: between(-120, 120) }).exactOptional(),
  fairwayWidthM: between(5, 120).exactOptional(),
  /** The green: how deep along the line of play, how wide, and by how much it is turned. */
  green: z.strictObject({
    depthM: between(4, 80),
    widthM: between(4, 80),
    turnedDeg: between(-90, 90).exactOptional(),
  }),
  hazards: z.array(hazard).max(60),
});
export type HoleNumbers = z.infer<typeof holeNumbersSchema>;
export type HazardNumbers = HoleNumbers['hazards'][number];

/** Holes to look at, or to keep as a course: a new one, or one that was typed before and stands as `course`. */
export const typedCourseSchema = z.strictObject({
  name: nameSchema,
  course: idSchema.exactOptional(),
  holes: z.array(holeNumbersSchema).min(1).max(36),
  keep: z.boolean(),
});

export const typedCourseReadSchema = z.strictObject({
  faults: z.array(faultSchema),
  /** The last of the holes, as it is sent to be drawn. */
  last: z.looseObject({ hole: z.looseObject({ hole: z.string() }) }).exactOptional(),
  kept: idSchema.exactOptional(),
});
