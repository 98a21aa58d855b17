import * as z from 'zod';
import { playerSchema } from '../player.ts';
import type { Forms } from './shape.ts';

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

/** Who the player is and what is in the bag. No date of birth, address or contact is kept. */
export const profileForms = [{ schema: form1 }] as const satisfies Forms;
export type Profile = z.infer<typeof form1>;
