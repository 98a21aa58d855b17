import * as z from 'zod';
import { playerSchema } from '../player.ts';
import type { Forms } from './shape.ts';
import { dateSchema } from './words.ts';

const { name, hand, sex, handicapIndex, units, clubs, lies, onCourse, putting, shortGame } = playerSchema.shape;

const form1 = z.strictObject({
  name,
  /** A child: nothing beyond what the advice needs is kept of anyone, and pages ask a minor for less. */
  minor: z.literal(true).exactOptional(),
  hand,
  sex,
  handicapIndex,
  units,
  clubs,
  lies,
  onCourse,
  putting,
  shortGame,
  /** Length of a walked pace. */
  paceM: z.number().min(0.4).max(1.5).exactOptional(),
});

const form2 = form1.extend({
  /** No longer on the coach's list; everything is kept. */
  archived: z.literal(true).exactOptional(),
  /** Sore or hurt since this day: no full efforts until it goes. */
  sparedSince: dateSchema.exactOptional(),
});

/** Who the player is and what is in the bag. No date of birth, address or contact is kept. */
export const profileForms = [
  { schema: form1 },
  { schema: form2, upgrade: (before) => before },
] as const satisfies Forms;
export type Profile = z.infer<typeof form2>;
