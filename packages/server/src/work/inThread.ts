import { Worker } from 'node:worker_threads';
import type { Approach, LedgerDocument, PlanDocument, Read } from '@leeway/contract';
import type { PlayerFile } from '@leeway/engine';
import type { AccountAsked } from './accountRound.ts';
import type { FittedShots, KeptBall } from './fitShots.ts';
import type { RoundAsked } from './planHoles.ts';

export type Work =
  | {
      readonly task: 'fit';
      readonly player: PlayerFile;
      readonly balls: readonly KeptBall[];
      readonly approaches: readonly Approach[];
    }
  | { readonly task: 'plan'; readonly asked: RoundAsked }
  | { readonly task: 'ledger'; readonly asked: AccountAsked };

/** What comes of each task. */
interface Outcomes {
  readonly fit: Read<FittedShots>;
  readonly plan: Read<PlanDocument>;
  readonly ledger: Read<LedgerDocument>;
}

export type Said = { readonly done: number; readonly total: number } | { readonly outcome: Outcomes[Work['task']] };

type OutcomeOf<W extends Work> = Outcomes[W['task']];

/**
 * Does work in a thread of its own, so that whoever serves goes on answering and a worker goes on giving signs of life. Rejects when the thread fails, and
 * when the signal says to stop, which stops it at once.
 */
export function inThread<W extends Work>(
  work: W,
  signal: AbortSignal,
  tell: (done: number, total: number) => void,
): Promise<OutcomeOf<W>> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(new URL('thread.ts', import.meta.url), { workerData: work });
    const stop = (): void => {
      void thread.terminate();
      reject(new Error('the work was stopped'));
    };
    if (signal.aborted) return stop();
    signal.addEventListener('abort', stop, { once: true });
    thread.on('message', (said: Said) => {
      if ('done' in said) return tell(said.done, said.total);
      resolve(said.outcome as OutcomeOf<W>);
    });
    thread.on('error', reject);
    thread.on('exit', (code) => {
      signal.removeEventListener('abort', stop);
      reject(new Error(`the thread ended with ${code} before it was done`));
    });
  });
}
