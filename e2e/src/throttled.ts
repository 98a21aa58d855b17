import { readdirSync, readFileSync } from 'node:fs';
import type { Browser, Page } from '@playwright/test';

/**
 * Slows the page's processor by a factor, as the browser's own tools do. That slows the main thread alone: measured, a worker's loop takes as long
 * with it as without. So whoever measures a worker's answers prints its own time at the processor beside them.
 */
export async function throttle(page: Page, factor: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: factor });
}

const TICK_MS = 10;

/** Time at the processor so far of all workers in the browser's pages, ms to a hundredth of a second; `undefined` where the system does not tell. */
export async function workersCpuMs(browser: Browser): Promise<number | undefined> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  try {
    return processInfo
      .filter(({ type }) => type === 'renderer')
      .flatMap(({ id }) => readdirSync(`/proc/${id}/task`).map((task) => `/proc/${id}/task/${task}`))
      .filter((task) => readFileSync(`${task}/comm`, 'utf8').startsWith('DedicatedWorker'))
      .reduce((sum, task) => {
        const fields = readFileSync(`${task}/stat`, 'utf8')
          .replace(/^.*\) /, '')
          .split(' ');
        return sum + TICK_MS * (Number(fields[11]) + Number(fields[12]));
      }, 0);
  } catch {
    return undefined;
  }
}

/** What a trace must hold for `longestTaskMs`. */
export const TASKS = ['toplevel', '__metadata'];

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds of the thread at the processor; a slowed page's are slowed too. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Time at the processor of the longest task of the pages' main threads in a trace, ms: other work on the machine does not count. */
export function longestTaskMs(trace: Buffer): number {
  const { traceEvents } = JSON.parse(trace.toString()) as { readonly traceEvents: readonly TraceEvent[] };
  const key = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const mains = new Set(
    traceEvents.filter((e) => e.name === 'thread_name' && e.args?.name === 'CrRendererMain').map(key),
  );
  const tasks = traceEvents.flatMap((e) =>
    e.name.endsWith('RunTask') && e.tdur !== undefined && mains.has(key(e)) ? [e.tdur / 1000] : [],
  );
  if (tasks.length === 0) throw new Error('the trace holds no task of a page');
  return Math.max(...tasks);
}
