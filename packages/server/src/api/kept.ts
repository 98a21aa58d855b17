import type { Read } from '@leeway/contract';
import type { JobQueue, Store } from '@leeway/store';
import { Refusal } from '../refusal.ts';

/** What the API works on. */
export interface Keeping {
  readonly store: Store;
  readonly queue: JobQueue;
  /** Where backups are written. */
  readonly backups: string;
}

/** What was read or done; what was refused becomes the answer. */
export function orRefuse<T>({ value, faults }: Read<T>): T {
  if (value === undefined) throw new Refusal(faults);
  return value;
}
