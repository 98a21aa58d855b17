import type { StoredRecord } from '@leeway/contract';

/** The account of a kept round. */
export type KeptLedger = StoredRecord<'ledger'>['body']['ledger'];
