import { LIES } from '@leeway/engine';
import * as z from 'zod';
import { daySchema } from './day.ts';
import { PLAN_VERSION } from './planVersion.ts';

const metres = z.number();
const strokes = z.number().positive();
const chance = z.number().min(0).max(1);
const place = z.strictObject({ lon: z.number(), lat: z.number() });
/** A place in the frame ball -> flag. */
const markedPlace = place.extend({ beyondFlagM: metres, rightOfFlagM: metres });
const option = z.strictObject({ club: z.string(), swing: z.string() });
const doubt = z.strictObject({
  se: z.number().min(0),
  balls: z.int().min(0),
  lo80: z.number(),
  hi80: z.number(),
});
const flagged = z.array(
  z.strictObject({
    kind: z.enum(['tee', 'green', 'road', 'path', 'building']),
    name: z.string().optional(),
    id: z.string(),
  }),
);
const chances = z.strictObject({
  green: chance,
  fairway: chance,
  rough: chance,
  bunker: chance,
  penalty: chance,
  outOfBounds: chance,
  recovery: chance,
  unmapped: chance,
});
/** Chances of the score on the hole, played on in the best way. */
const scores = z.strictObject({ parOrBetter: chance, doubleOrWorse: chance });
const stroke = z.strictObject({
  option,
  aim: markedPlace,
  spot: markedPlace,
  expectedStrokes: strokes,
  doubt,
  flagged: flagged.optional(),
  scores: scores.optional(),
});
const between = z.strictObject({ lo80: metres, hi80: metres });
const plainLine = z.strictObject({ option, expectedStrokes: strokes, doubt });
const arm = metres.min(0).nullable();

export const shotSchema = z.strictObject({
  from: place,
  lie: z.enum(LIES),
  /** The ball was dropped here, or the stroke is replayed. */
  dropped: z.literal(true).optional(),
  toFlagM: metres.min(0),
  landsM: metres.min(0),
  finishesM: metres.min(0),
  todaysNumber: z.strictObject({
    toLandingM: metres,
    windM: metres,
    slopeM: metres,
    airM: metres,
    lieM: metres,
    playsM: metres,
    /** Four times in five a part lies between these; a part that is nought has none. */
    doubt: z.strictObject({ wind: between.optional(), slope: between.optional(), air: between.optional() }).optional(),
  }),
  option,
  /** Where the option's pattern comes from. */
  evidence: z.enum(['stated', 'fitted', 'claimed', 'prior', 'short game']),
  aim: markedPlace,
  spot: markedPlace,
  startLine: z.string().optional(),
  expectedStrokes: strokes,
  doubt,
  flagged: flagged.optional(),
  atFlag: plainLine.optional(),
  middleOfFairway: plainLine.optional(),
  chances,
  scores: scores.optional(),
  room: z.array(z.strictObject({ more: z.number().positive(), leftM: arm, rightM: arm, shortM: arm, longM: arm })),
  proximity: z.strictObject({ meanM: metres.min(0), medianM: metres.min(0) }),
  reasons: z.array(z.string()),
  alternatives: z
    .array(
      stroke.extend({
        costsMore: z.number().min(0),
        why: z.string(),
        /** It differs by the putt alone, too little to tell on a green whose slope is not known. */
        tie: z.literal(true).optional(),
      }),
    )
    .max(2),
  simplest: stroke.optional(),
  /** The choice hangs on what is not known of a pattern: so many more balls of it would settle it against the next best. */
  wouldSettle: option.extend({ balls: z.int().positive() }).optional(),
  /** The cheapest stroke, when its pattern reaches something it should not and another within 0.1 is shown first. */
  heldBack: stroke.optional(),
  named: z.array(stroke.extend({ costsMore: z.number(), chances })).optional(),
  worthLearning: z.array(stroke.extend({ savesStrokes: z.number().positive() })).optional(),
});

export const planSchema = z.strictObject({
  version: z.literal(PLAN_VERSION),
  course: z.string().optional(),
  /** The line that must stand wherever the map, or what was made from it, is shown. */
  attribution: z.string().optional(),
  /** What it does not tell was not asked for in plans that are older than the day. */
  day: daySchema.partial().required({ windMps: true, temperatureC: true, pressureHpa: true, humidityPercent: true }),
  player: z.strictObject({ name: z.string() }),
  /** What was settled about the Rules, where it is not the usual: Model Local Rule E-5, and the shares of balls never found. */
  rules: z
    .strictObject({ e5: z.literal(true).optional(), lostInTrees: chance.optional(), lostInRough: chance.optional() })
    .optional(),
  /** The bag for these holes, when it was asked for: what each club is worth with all others in it, which to carry and which to leave. */
  bag: z
    .strictObject({
      expectedStrokes: strokes,
      clubs: z.array(z.strictObject({ club: z.string(), worthStrokes: z.number().nullable(), earns: z.boolean() })),
      carry: z.array(z.string()),
      leave: z.array(z.string()),
    })
    .optional(),
  /** Of all holes together, when there is more than one. */
  round: z.strictObject({ par: z.int(), expectedStrokes: strokes, doubt }).optional(),
  holes: z.array(
    z.strictObject({
      hole: z.string(),
      name: z.string().optional(),
      par: z.int(),
      parGuessed: z.literal(true).optional(),
      lengthM: metres,
      /** Whence the heights of its ground are known; it is taken as level when this is absent. */
      heights: z.enum(['spot heights', 'raster']).optional(),
      flag: place.extend({ from: z.enum(['given', 'pin', 'line end', 'green centre']) }),
      expectedStrokes: strokes,
      doubt,
      greenTakenAsFlat: z.literal(true).optional(),
      solver: z.strictObject({
        states: z.int(),
        options: z.int(),
        sweeps: z.int(),
        residual: z.number(),
        converged: z.boolean(),
        milliseconds: z.number().optional(),
      }),
      shots: z.array(shotSchema).min(1),
      /** Present when the plan does not reach the green: why not. */
      endsEarly: z.string().optional(),
    }),
  ),
});

/** `leeway plan --json`. */
export type PlanDocument = z.infer<typeof planSchema>;
/** `leeway shot --json`: one entry of a plan's `shots`. */
export type ShotDocument = z.infer<typeof shotSchema>;
export type HoleDocument = PlanDocument['holes'][number];
export type StrokeDocument = z.infer<typeof stroke>;

/** JSON Schemas (2020-12) of the two documents. */
export const planJsonSchema = (): object => ({ title: 'Plan', ...z.toJSONSchema(planSchema) });
export const shotJsonSchema = (): object => ({ title: 'Shot', ...z.toJSONSchema(shotSchema) });
