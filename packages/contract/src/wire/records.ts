import * as z from 'zod';
import { KINDS, type Kind } from '../stored/kinds.ts';
import { recordSchema } from '../stored/record.ts';
import { currentVersion } from '../stored/shape.ts';
import { idSchema } from '../stored/words.ts';

/** Most records that one request may bring, and most that one answer holds unless less is asked for. */
export const MOST_RECORDS = 5000;

const { madeAt, supersedes } = recordSchema.shape;

/** The newest form of a kind's body. */
const bodyOf = (kind: Kind): z.ZodType => {
  const { forms } = KINDS[kind];
  return forms[currentVersion(forms) - 1]?.schema ?? z.never();
};

/** A record of a kind as a client sends it to that kind's address. */
export const sentRecordOf = (kind: Kind) => z.strictObject({ id: idSchema, madeAt, supersedes, body: bodyOf(kind) });

/** Records of a kind as a client sends them. */
export const sentRecordsOf = (kind: Kind) =>
  z.strictObject({ records: z.array(sentRecordOf(kind)).min(1).max(MOST_RECORDS) });

/** Records of any kinds and forms, as a phone sends what it has kept. */
export const sentRecordsSchema = z.strictObject({ records: z.array(recordSchema).min(1).max(MOST_RECORDS) });

const seq = z.int().min(1);

/** A record as it is read back: its place in the order of everything, and the body in its newest form. */
export const keptRecordOf = (kind: Kind) => recordSchema.extend({ kind: z.literal(kind), seq, body: bodyOf(kind) });

export const keptRecordsOf = (kind: Kind) => z.strictObject({ records: z.array(keptRecordOf(kind)) });

export const keptRecordSchema = recordSchema.extend({ seq });
export const keptRecordsSchema = z.strictObject({ records: z.array(keptRecordSchema) });

export const receiptsSchema = z.strictObject({
  receipts: z.array(z.strictObject({ owner: idSchema, id: idSchema, outcome: z.enum(['stored', 'already']), seq })),
});

export const changesSchema = z.strictObject({
  /** The store that the numbers count in: a phone that meets another starts at 0 again. */
  store: idSchema,
  records: z.array(keptRecordSchema),
  /** Owners whose copies are to be destroyed. */
  erased: z.array(idSchema),
  upTo: z.int().min(0),
  more: z.boolean(),
});
