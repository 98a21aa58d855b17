import * as z from 'zod';
import { ledgerSchema } from '../ledger.ts';
import type { Forms } from './shape.ts';
import { idSchema } from './words.ts';

const form1 = z.strictObject({
  round: idSchema,
  /** The strokes that it accounts for. */
  strokes: z.array(idSchema).max(2000),
  /** The patterns that it was accounted by, where any were fitted. */
  fitted: idSchema.exactOptional(),
  ledger: ledgerSchema,
});

/** The account of a round, as it was made. A later one is another record. */
export const ledgerForms = [{ schema: form1 }] as const satisfies Forms;
export type StoredLedger = z.infer<typeof form1>;
