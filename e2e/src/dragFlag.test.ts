import { type Browser, expect, type Page, test } from '@playwright/test';
import { slownessNow } from './machine.ts';
import { say } from './say.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { longestTaskMs, TASKS, throttle, workersCpuMs } from './throttled.ts';
import { answered, contourPrint, figure, handle, openPlan, LONG_MS, seen, stillDrawn, watch } from './watched.ts';

/** On a quiet machine. */
const ANSWERED_MS = 250;
const ATTEMPTS = 10;
/** The finger moves so often, this far each time, and this many times. */
const EVERY_MS = 40;
const STEP = { x: 2, y: 1 };
const STEPS = 20;

// a machine that is busy with other things is tried again
test.describe.configure({ retries: 2 });

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

test.use({ viewport: { width: 1280, height: 860 } });

/** Everything that must change with the flag. */
const shown = async (page: Page) => ({
  expected: await figure(page, 'expected').innerText(),
  spot: await figure(page, 'spot').innerText(),
  contours: await contourPrint(page),
});

async function middleOf(page: Page, which: 'flag' | 'spot'): Promise<{ x: number; y: number }> {
  const box = await handle(page, which).boundingBox();
  if (box === null) throw new Error(`no ${which} to take hold of`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

const STEPPED = Array.from({ length: STEPS }, (_, i) => i + 1);

/** Ways to move the flag by some metres, there (`way` 1) or back (-1); each ends with the flag held still. */
const WAYS: { readonly [name: string]: (page: Page, way: 1 | -1) => Promise<void> } = {
  pointer: async (page, way) => {
    const from = await middleOf(page, 'flag');
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (const k of STEPPED) {
      await page.mouse.move(from.x + way * k * STEP.x, from.y + way * k * STEP.y);
      await page.waitForTimeout(EVERY_MS);
    }
  },
  keyboard: async (page, way) => {
    await handle(page, 'flag').focus();
    for (const k of STEPPED.slice(0, 8)) {
      await page.keyboard.press(
        k % 2 === 0 ? (way === 1 ? 'ArrowDown' : 'ArrowUp') : way === 1 ? 'ArrowRight' : 'ArrowLeft',
      );
      await page.waitForTimeout(EVERY_MS);
    }
  },
  touch: async (page, way) => {
    const finger = await page.context().newCDPSession(page);
    const from = await middleOf(page, 'flag');
    await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
    for (const k of STEPPED) {
      const touchPoints = [{ x: from.x + way * k * STEP.x, y: from.y + way * k * STEP.y }];
      await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints });
      await page.waitForTimeout(EVERY_MS);
    }
    await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await finger.detach();
  },
};

/** One move of the flag with the page slowed fourfold, as the page saw it, and what it took at the processor. */
async function moved(page: Page, browser: Browser, way: (page: Page) => Promise<void>) {
  const workerBeforeMs = await workersCpuMs(browser);
  await watch(page);
  await browser.startTracing(page, { categories: TASKS });
  await way(page);
  const answeredMs = await answered(page);
  const longestTaskCpuMs = longestTaskMs(await browser.stopTracing());
  const { longTasksMs, longHandlersMs } = await seen(page);
  await page.mouse.up();
  const workerAfterMs = await workersCpuMs(browser);
  const workerMs = workerBeforeMs === undefined || workerAfterMs === undefined ? NaN : workerAfterMs - workerBeforeMs;
  return { answeredMs, longestTaskCpuMs, longMs: [...longTasksMs, ...longHandlersMs], workerMs };
}

for (const [way, move] of Object.entries(WAYS)) {
  test.describe(way, () => {
    test.use({ hasTouch: way === 'touch' });

    test(`the flag moved by ${way}: spot, figures and contours follow, the page stays free, and the choice is there soon`, async ({
      page,
      browser,
    }) => {
      await openPlan(page, leeway.address);
      const before = await shown(page);
      await throttle(page, 4);
      // what else runs on the machine can only make it longer, so the best of a few moves counts
      const limitMs = ANSWERED_MS * slownessNow();
      const isFree = (m: Awaited<ReturnType<typeof moved>>): boolean =>
        m.answeredMs <= limitMs && m.longestTaskCpuMs <= LONG_MS;
      const moves: Awaited<ReturnType<typeof moved>>[] = [];
      while (moves.length < ATTEMPTS && !moves.some(isFree)) {
        const now = await moved(page, browser, (on) => move(on, moves.length % 2 === 0 ? 1 : -1));
        say(
          `${way}: choice ${now.answeredMs.toFixed(0)} ms after the last move, limit ${limitMs.toFixed(0)} as busy as the machine is, page slowed fourfold; longest task ${now.longestTaskCpuMs.toFixed(1)} ms at the processor, ` +
            `over ${LONG_MS} ms by the clock: ${now.longMs.map((ms) => ms.toFixed(0)).join(', ') || 'none'}; worker ${now.workerMs} ms at the processor, not slowed`,
        );
        await stillDrawn(page);
        if (moves.push(now) > 1) continue;
        const after = await shown(page);
        expect(after.spot).not.toBe(before.spot);
        expect(after.expected).not.toBe(before.expected);
        expect(after.contours.pixels).toBeGreaterThan(500);
        expect(after.contours.print).not.toBe(before.contours.print);
      }
      expect(moves.filter(isFree)).not.toEqual([]);
    });
  });
}

test('the spot dragged away is told what it costs more, and the choice stays', async ({ page }) => {
  await openPlan(page, leeway.address);
  const before = await figure(page, 'expected').innerText();
  const from = await middleOf(page, 'spot');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x - 60, from.y + 50, { steps: 12 });
  await page.mouse.up();
  await expect(figure(page, 'costsMore')).toHaveText(/\d\.\d\d/, { timeout: 20_000 });
  expect(await figure(page, 'expected').innerText()).toBe(before);
});
