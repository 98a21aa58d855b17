import * as z from 'zod';
import type { Forms } from './shape.ts';

const form1 = z.strictObject({ why: z.string().min(1).max(200).exactOptional() });

/** Takes the record that it supersedes out of the current ones: a ball that was not the player's, a note taken back. */
export const withdrawalForms = [{ schema: form1 }] as const satisfies Forms;
export type Withdrawal = z.infer<typeof form1>;
