import { expect, test } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import { slownessNow } from './machine.ts';
import { say } from './say.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { throttle, workersCpuMs } from './throttled.ts';

/** On a quiet machine; what else runs can only make it longer, so the best of some runs counts. */
const READY_MS = 1500;
const RUNS = 10;

// a machine that is busy with other things is tried again
test.describe.configure({ retries: 2 });

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

test('choice and chart are there soon after opening the page, its processor slowed fourfold', async ({ browser }) => {
  const ready: number[] = [];
  const workers: (number | undefined)[] = [];
  const limitMs = READY_MS * slownessNow();
  for (let run = 0; run < RUNS && !ready.some((ms) => ms <= limitMs); run++) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
    const page = await context.newPage();
    await throttle(page, 4);
    // from the start of the navigation to the frame after the one that shows both
    await page.addInitScript(
      ([answer, drawn]) => {
        const look = (): void => {
          if (document.querySelector(`[${answer}]`) === null || document.querySelector(`[${drawn}]`) === null)
            requestAnimationFrame(look);
          else requestAnimationFrame(() => Object.assign(window, { readyMs: performance.now() }));
        };
        requestAnimationFrame(look);
      },
      [HOOKS.answer.attribute, HOOKS.drawn] as const,
    );
    await page.goto(leeway.address);
    const handle = await page.waitForFunction(() => (window as unknown as { readyMs?: number }).readyMs);
    ready.push(Number(await handle.jsonValue()));
    await expect(page.locator(`[${HOOKS.figure.attribute}=expected]`).first()).toHaveText(/^\d\.\d\d$/);
    workers.push(await workersCpuMs(browser));
    await context.close();
  }
  say(
    `ready after ${ready.map((ms) => ms.toFixed(0)).join(', ')} ms; its worker at the processor ${workers.map((ms) => ms ?? 'unknown').join(', ')} ms (not slowed); limit ${limitMs.toFixed(0)} ms as busy as the machine is`,
  );
  expect(Math.min(...ready)).toBeLessThanOrEqual(limitMs);
});
