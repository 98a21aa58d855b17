import type { Fault, RecordInput } from '@leeway/contract';

/** Why one record was not taken. */
export const recordFault = (code: string, record: RecordInput, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file: record.kind,
  at: record.id,
  found,
  expected,
});
