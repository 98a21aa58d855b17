import { CHOICE_HABITS, EXECUTION_HABITS, PARTS } from '@leeway/engine';
import * as z from 'zod';

/** Version of the ledger document; it rises when a field changes its meaning or goes. */
export const LEDGER_VERSION = 1;

const strokes = z.number();
const ofSoMany = z.tuple([z.int(), z.int()]);
/** Metres in the plane of the hole. */
const place = z.strictObject({ eastM: z.number(), northM: z.number() });

/** What `leeway ledger --json` prints: strokes, a loss positive, a gain against a baseline positive too. */
export const ledgerSchema = z.strictObject({
  version: z.literal(LEDGER_VERSION),
  player: z.strictObject({ name: z.string() }),
  /** The handicap index that `gained` is measured against; -5.5 is the tour. */
  baselineIndex: z.number(),
  rounds: z.array(
    z.strictObject({
      date: z.string().optional(),
      holes: z.int(),
      score: z.int(),
      /** What the player's own best choices would take on these holes. */
      expected: strokes,
      gained: z.strictObject({
        longShot: strokes,
        shortGame: strokes,
        putt: strokes,
        total: strokes,
        baseline: strokes,
      }),
      /** Losses by what they were: choosing, execution against the player's own pattern, and strokes whose club is not known, short game and putts. */
      choice: strokes,
      execution: strokes,
      shortGame: strokes,
      putting: strokes,
      untold: strokes,
      /** What players count: so many of so many. */
      counts: z.strictObject({
        fairways: ofSoMany,
        greens: ofSoMany,
        upAndDown: ofSoMany,
        putts: z.int(),
        penalties: z.int(),
      }),
      /** The score of the best choices, four times in five, and the chance of the score that was played or fewer. */
      predicted: z.strictObject({ mean: strokes, lo80: strokes, hi80: strokes, chance: z.number() }),
    }),
  ),
  holes: z.array(
    z.strictObject({
      round: z.int(),
      hole: z.string(),
      par: z.int(),
      score: z.int(),
      expected: strokes,
      choice: strokes,
    }),
  ),
  /** Finishes of long shots whose aim was noted beside what the patterns predicted; absent without any. */
  finishes: z
    .strictObject({
      shots: z.int(),
      short: z.strictObject({ share: z.number(), predicted: z.number(), meanM: z.number() }),
      in80: z.strictObject({ along: z.number(), across: z.number() }),
    })
    .optional(),
  habits: z.array(
    z.strictObject({
      habit: z.enum([...CHOICE_HABITS, ...EXECUTION_HABITS, 'penalty']),
      /** The yardstick: `usual of index 14` is the prior of the player's own index; penalties are counted, and are in the others too. */
      against: z.union([
        z.literal('own best choice'),
        z.string().regex(/^usual of index -?\d+(\.\d+)?$/),
        z.literal('no penalties'),
      ]),
      strokesPerRound: z.strictObject({ mean: strokes, lo80: strokes, hi80: strokes }),
      shown: z.boolean(),
      examples: z.array(z.strictObject({ round: z.int(), hole: z.string(), shot: z.int(), strokes })),
    }),
  ),
  /** Parts of the game of which nothing but the prior is known, so that there is nothing to compare. */
  unmeasured: z.array(z.enum(EXECUTION_HABITS)),
  shots: z.array(
    z.strictObject({
      round: z.int(),
      hole: z.string(),
      shot: z.int(),
      part: z.enum(PARTS),
      club: z.string().optional(),
      swing: z.string().optional(),
      lie: z.string(),
      from: place,
      to: place,
      loss: strokes,
      choice: z.strictObject({ spot: strokes, number: strokes, swing: strokes, risk: strokes }).optional(),
      execution: z.strictObject({ strike: strokes, direction: strokes, length: strokes, luck: strokes }).optional(),
      penalty: z.int().optional(),
      aimNoted: z.boolean(),
    }),
  ),
});
export type LedgerDocument = z.infer<typeof ledgerSchema>;

export const ledgerJsonSchema = (): object => ({ title: 'Ledger', ...z.toJSONSchema(ledgerSchema) });
