import { CHOICE_HABITS, PARTS } from '@leeway/engine';
import * as z from 'zod';

/** Version of the ledger document; it rises when a field changes its meaning or goes. */
export const LEDGER_VERSION = 1;

const strokes = z.number();

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
    }),
  ),
  habits: z.array(
    z.strictObject({
      habit: z.enum(CHOICE_HABITS),
      against: z.literal('own best choice'),
      strokesPerRound: z.strictObject({ mean: strokes, lo80: strokes, hi80: strokes }),
      shown: z.boolean(),
      examples: z.array(z.strictObject({ round: z.int(), hole: z.string(), shot: z.int(), strokes })),
    }),
  ),
  shots: z.array(
    z.strictObject({
      round: z.int(),
      hole: z.string(),
      shot: z.int(),
      part: z.enum(PARTS),
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
