import { Asker, workerPort } from '@leeway/desk';
import type { PlanDesk } from './asks.ts';

/** Starts the page's worker, and asks it. Every answer rejects with a line to show when something went wrong. */
export function openDesk(): { readonly desk: PlanDesk; readonly close: () => void } {
  const worker = new Worker(new URL('./worker/main.ts', import.meta.url), { type: 'module', name: 'plan' });
  const asker = new Asker<PlanDesk>(workerPort(worker));
  const desk: PlanDesk = {
    open: (ask) => asker.ask('open', ask),
    moveFlag: (ask) => asker.ask('moveFlag', ask),
    spot: (ask) => asker.ask('spot', ask),
    options: (ask) => asker.ask('options', ask),
    scores: (ask) => asker.ask('scores', ask),
    keep: (ask) => asker.ask('keep', ask),
    draw: (ask) => asker.ask('draw', ask),
    foresee: (ask) => asker.ask('foresee', ask),
    drawIndex: (ask) => asker.ask('drawIndex', ask),
    behind: (ask) => asker.ask('behind', ask),
  };
  return { desk, close: () => worker.terminate() };
}
