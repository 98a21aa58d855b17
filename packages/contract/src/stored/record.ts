import * as z from 'zod';
import type { Fault, Read } from '../fault.ts';
import { faultsOfIssues } from '../issues.ts';
import { HOUSE, KIND_NAMES, KINDS, type Bodies, type Kind } from './kinds.ts';
import { currentVersion, readForm } from './shape.ts';
import { idSchema } from './words.ts';

/** A record as it is written, sent and kept; the body has the form of its version. */
export const recordSchema = z.strictObject({
  /** The player's id, or the house's. Ids of records are scoped to it. */
  owner: idSchema,
  id: idSchema,
  kind: z.enum(KIND_NAMES),
  version: z.int().min(1),
  /** By the clock of whoever made it: for reading only, nothing is ordered by it. */
  madeAt: z.iso.datetime({ offset: true }),
  /** The record that this one corrects. */
  supersedes: idSchema.exactOptional(),
  body: z.unknown(),
});
export type RecordInput = z.infer<typeof recordSchema>;

/** A record read back: the body in its newest form. */
export interface StoredRecord<K extends Kind = Kind> {
  readonly owner: string;
  readonly id: string;
  readonly kind: K;
  /** The version that it was stored in. */
  readonly version: number;
  readonly madeAt: string;
  readonly supersedes?: string;
  readonly body: Bodies[K];
}

/**
 * Checks a record. The value is the record as it came, key for key, so that its content stays what its maker sent. Refused: a shape or version
 * that is not known, a kind that its owner cannot have, a withdrawal of nothing, a record that supersedes itself.
 */
export function readRecord(input: unknown, name = 'record'): Read<RecordInput> {
  const parsed = recordSchema.safeParse(input);
  if (!parsed.success) return { faults: faultsOfIssues(parsed.error.issues, input, name) };
  const record = parsed.data;
  const faults = [
    ...ownerFaults(record, name),
    ...supersedingFaults(record, name),
    ...readForm(KINDS[record.kind].forms, record.version, record.body, `${name}: ${record.kind}`).faults,
  ];
  return faults.length > 0 ? { faults } : { value: record, faults };
}

/** A record to store, in the newest form of its kind. */
export const newRecord = <K extends Kind>(
  kind: K,
  { body, ...header }: Pick<StoredRecord<K>, 'owner' | 'id' | 'madeAt' | 'supersedes' | 'body'>,
): RecordInput => ({ ...header, kind, version: currentVersion(KINDS[kind].forms), body });

/** The record with its body in the newest form. Throws when the body is not of its version: it was checked when it was stored. */
export function newestForm(record: RecordInput): StoredRecord {
  const { forms } = KINDS[record.kind];
  if (record.version === currentVersion(forms)) return { ...record, body: record.body as Bodies[Kind] };
  const read = readForm(forms, record.version, record.body, record.kind);
  if (read.value === undefined)
    throw new Error(`A stored ${record.kind} of version ${record.version} cannot be read: ${read.faults[0]?.found}.`);
  return { ...record, body: read.value as Bodies[Kind] };
}

const refused = (name: string, at: string, found: string, expected: string): Fault => ({
  code: 'record',
  level: 'refused',
  file: name,
  at,
  found,
  expected,
});

function ownerFaults(record: RecordInput, name: string): readonly Fault[] {
  const { of } = KINDS[record.kind];
  const owner = record.owner === HOUSE ? 'house' : 'player';
  if (of === 'either' || of === owner) return [];
  return [refused(name, 'owner', `a ${record.kind} of the ${owner}`, `a ${record.kind} of a ${of}`)];
}

function supersedingFaults(record: RecordInput, name: string): readonly Fault[] {
  if (record.supersedes === record.id)
    return [refused(name, 'supersedes', 'the record itself', 'another record of the same owner')];
  if (record.kind === 'withdrawal' && record.supersedes === undefined)
    return [refused(name, 'supersedes', 'nothing', 'the record that is withdrawn')];
  return [];
}
