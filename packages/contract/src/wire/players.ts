import * as z from 'zod';
import { carriesSchema } from '../carries.ts';
import { KIND_NAMES, type Kind } from '../stored/kinds.ts';
import type { StoredRecord } from '../stored/record.ts';
import { dateSchema, idSchema } from '../stored/words.ts';
import { keptRecordOf } from './records.ts';

/** The coach's list. */
export const playerListSchema = z.strictObject({
  players: z.array(
    z.strictObject({
      profile: keptRecordOf('profile'),
      /** The newest record of each kind, the newest kind first: what changed. */
      latest: z.array(
        z.strictObject({ kind: z.enum(KIND_NAMES), seq: z.int().min(1), at: z.iso.datetime({ offset: true }) }),
      ),
    }),
  ),
});

/** A player of that list, read. */
export interface ListedPlayer {
  readonly profile: StoredRecord<'profile'>;
  readonly latest: readonly { readonly kind: Kind; readonly seq: number; readonly at: string }[];
}

/** What a ladder of carries is drawn from. */
export const ladderSchema = z.strictObject({
  /** The newest fit, its figures, and whether profile and shots are still those it was made from. */
  fitted: z
    .strictObject({
      id: idSchema,
      seq: z.int().min(1),
      upToDate: z.boolean(),
      ladder: carriesSchema.pick({ entries: true, gaps: true }).exactOptional(),
    })
    .nullable(),
  /** Every current ball, in the order in which it was stored. */
  balls: z.array(
    z.strictObject({
      id: idSchema,
      session: idSchema,
      date: dateSchema.exactOptional(),
      club: z.string(),
      swing: z.string(),
      carryM: z.number(),
      sideM: z.number().exactOptional(),
      /** Called a mishit by whoever saw it. */
      mishit: z.literal(true).exactOptional(),
    }),
  ),
});
export type LadderData = z.infer<typeof ladderSchema>;

/** To erase is to name whom. */
export const erasureSchema = z.strictObject({
  /** The player's name as it stands in the profile. */
  name: z.string().min(1).max(80),
});
export const erasedSchema = z.strictObject({
  records: z.int().min(0),
  jobs: z.int().min(0),
  /** Files with copies of the keys that could not be written anew: the erased key still stands in them. */
  unreached: z.array(z.string()),
});
