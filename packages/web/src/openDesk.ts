import { Asker, workerPort } from '@leeway/desk';
import type { PlanDesk } from './asks.ts';

/** Starts the page's worker, and asks it. Every answer rejects with a line to show when something went wrong. */
export function openDesk(): PlanDesk {
  const worker = new Worker(new URL('./worker/main.ts', import.meta.url), { type: 'module', name: 'plan' });
  const desk = new Asker<PlanDesk>(workerPort(worker));
  return {
    open: (ask) => desk.ask('open', ask),
    moveFlag: (ask) => desk.ask('moveFlag', ask),
    spot: (ask) => desk.ask('spot', ask),
    draw: (ask) => desk.ask('draw', ask),
    drawIndex: (ask) => desk.ask('drawIndex', ask),
    behind: (ask) => desk.ask('behind', ask),
  };
}
