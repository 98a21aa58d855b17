import { expect, type Locator, type Page } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';

/** What the page itself saw since `watch`. Times in ms. */
export interface Seen {
  /** Tasks of the main thread that took over 50 ms, and handlers of input events that did. */
  readonly longTasksMs: readonly number[];
  readonly longHandlersMs: readonly number[];
  /** From the last move of the flag to the change of the page that showed the choice for it; `undefined` while it has not come. */
  readonly answeredMs: number | undefined;
}

interface Watching {
  longTasksMs: number[];
  longHandlersMs: number[];
  movedAt: number;
  answeredAt: number | undefined;
}
type Watched = Window & { watching?: Watching };

export const LONG_MS = 50;

/** Begins to watch the main thread and the flag's choice, from now on. */
export async function watch(page: Page): Promise<void> {
  await page.evaluate(
    ({ flagAt, answeredFor, longMs }) => {
      const seen: Watching = { longTasksMs: [], longHandlersMs: [], movedAt: NaN, answeredAt: undefined };
      (window as Watched).watching = seen;
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) if (duration > longMs) seen.longTasksMs.push(duration);
      }).observe({ type: 'longtask' });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as PerformanceEventTiming[]) {
          const tookMs = entry.processingEnd - entry.processingStart;
          if (tookMs > longMs) seen.longHandlersMs.push(tookMs);
        }
      }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
      const main = document.querySelector('main');
      if (main === null) return;
      let flag = main.getAttribute(flagAt);
      new MutationObserver(() => {
        const now = performance.now();
        const at = main.getAttribute(flagAt);
        if (at !== flag) [flag, seen.movedAt, seen.answeredAt] = [at, now, undefined];
        if (main.getAttribute(answeredFor) === at) seen.answeredAt ??= now;
      }).observe(main, { attributes: true });
    },
    { flagAt: HOOKS.flagAt, answeredFor: HOOKS.answeredFor, longMs: LONG_MS },
  );
}

export const seen = (page: Page): Promise<Seen> =>
  page.evaluate(() => {
    const { longTasksMs, longHandlersMs, movedAt, answeredAt } = (window as Watched).watching ?? {
      longTasksMs: [],
      longHandlersMs: [],
      movedAt: NaN,
      answeredAt: undefined,
    };
    return {
      longTasksMs,
      longHandlersMs,
      answeredMs: answeredAt === undefined ? undefined : answeredAt - movedAt,
    };
  });

/** Waits until the shown choice is the one for the flag where it is, and gives how long that took from its last move, ms. */
export async function answered(page: Page): Promise<number> {
  await expect.poll(async () => (await seen(page)).answeredMs, { timeout: 30_000, intervals: [20] }).toBeDefined();
  return (await seen(page)).answeredMs ?? NaN;
}

export const figure = (page: Page, name: (typeof HOOKS.figure.values)[number]): Locator =>
  page.locator(`[${HOOKS.figure.attribute}=${name}]`).first();

export const handle = (page: Page, which: 'flag' | 'spot'): Locator =>
  page.getByRole(HOOKS.handles.role, { name: HOOKS.handles[which], exact: true });

/** Opens the app, and waits for a settled choice and its chart. */
export async function openPlan(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.locator(`main[${HOOKS.answer.attribute}=settled]`)).toBeVisible({ timeout: 60_000 });
  await expect(page.locator(`[${HOOKS.drawn}]`).first()).toBeVisible({ timeout: 60_000 });
  await stillDrawn(page);
}

/** Waits until the chart has shown no new picture for a while. */
export async function stillDrawn(page: Page): Promise<void> {
  const chart = page.locator(`[${HOOKS.drawn}]`).first();
  let [last, same] = ['', 0];
  await expect
    .poll(
      async () => {
        const now = `${await chart.getAttribute(HOOKS.drawn)} ${await page.locator('main').getAttribute(HOOKS.answer.attribute)}`;
        same = now === last ? same + 1 : 0;
        last = now;
        return same >= 5 && now.endsWith('settled');
      },
      { timeout: 60_000, intervals: [100] },
    )
    .toBe(true);
}

/** Where the chart has the ink of contours: a print of those pixels, to tell one chart's contours from another's. */
export const contourPrint = (page: Page): Promise<{ readonly pixels: number; readonly print: number }> =>
  page
    .locator(`canvas[${HOOKS.drawn}]`)
    .first()
    .evaluate(async (canvas) => {
      const { width, height } = canvas as HTMLCanvasElement;
      const copy = new OffscreenCanvas(width, height).getContext('2d');
      copy?.drawImage(canvas as HTMLCanvasElement, 0, 0);
      const data = copy?.getImageData(0, 0, width, height).data ?? new Uint8ClampedArray();
      let [pixels, print] = [0, 0];
      for (let i = 0; i < data.length; i += 4) {
        const off =
          Math.abs((data[i] ?? 0) - 0x2c) + Math.abs((data[i + 1] ?? 0) - 0x60) + Math.abs((data[i + 2] ?? 0) - 0x79);
        if (off > 24) continue;
        pixels++;
        print = (Math.imul(print, 31) + i) | 0;
      }
      return { pixels, print };
    });
