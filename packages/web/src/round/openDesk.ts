import { Pool, workerPort } from '@leeway/desk';
import type { RoundDesk } from './asks.ts';

/** Two holes are planned at a time, where the machine has the processors for it. */
const WORKERS = Math.min(2, Math.max(1, navigator.hardwareConcurrency - 1));

/** Starts the workers that plan holes; holes wait for the first that is free. */
export function openRoundDesk(): { readonly desk: RoundDesk; readonly close: () => void } {
  const start = (): Worker =>
    new Worker(new URL('../worker/round.ts', import.meta.url), { type: 'module', name: 'round' });
  const pool = new Pool<RoundDesk>(Array.from({ length: WORKERS }, () => workerPort(start())));
  return { desk: { hole: (ask) => pool.ask('hole', ask) }, close: () => pool.close() };
}
