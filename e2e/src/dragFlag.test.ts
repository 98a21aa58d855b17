import { expect, type Page, test } from '@playwright/test';
import { say } from './say.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { throttle, workersCpuMs } from './throttled.ts';
import { answered, contourPrint, figure, handle, openPlan, seen, stillDrawn, watch } from './watched.ts';

const ANSWERED_MS = 250;
/** The finger moves so often, this far each time, and this many times. */
const EVERY_MS = 40;
const STEP = { x: 2, y: 1 };
const STEPS = 20;

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

/** Ways to move the flag by some metres; each ends with the flag held still. */
const WAYS: { readonly [name: string]: (page: Page) => Promise<void> } = {
  pointer: async (page) => {
    const from = await middleOf(page, 'flag');
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (const k of STEPPED) {
      await page.mouse.move(from.x + k * STEP.x, from.y + k * STEP.y);
      await page.waitForTimeout(EVERY_MS);
    }
  },
  keyboard: async (page) => {
    await handle(page, 'flag').focus();
    for (const k of STEPPED.slice(0, 8)) {
      await page.keyboard.press(k % 2 === 0 ? 'ArrowDown' : 'ArrowRight');
      await page.waitForTimeout(EVERY_MS);
    }
  },
  touch: async (page) => {
    const finger = await page.context().newCDPSession(page);
    const from = await middleOf(page, 'flag');
    await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
    for (const k of STEPPED) {
      const touchPoints = [{ x: from.x + k * STEP.x, y: from.y + k * STEP.y }];
      await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints });
      await page.waitForTimeout(EVERY_MS);
    }
    await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  },
};

for (const [way, move] of Object.entries(WAYS)) {
  test.describe(way, () => {
    test.use({ hasTouch: way === 'touch' });

    test(`the flag moved by ${way}: spot, figures and contours follow, the page stays free, and the choice is there in ${ANSWERED_MS} ms`, async ({
      page,
      browser,
    }) => {
      await openPlan(page, leeway.address);
      const before = await shown(page);
      await throttle(page, 4);
      await watch(page);
      const workerMs = await workersCpuMs(browser);
      await move(page);
      const answeredMs = await answered(page);
      const { longTasksMs, longHandlersMs } = await seen(page);
      const worker = workerMs === undefined ? 'unknown' : ((await workersCpuMs(browser)) ?? NaN) - workerMs;
      say(
        `${way}: the choice ${answeredMs.toFixed(0)} ms after the last move, page slowed fourfold; its worker at the processor ${worker} ms (not slowed)`,
      );
      await page.mouse.up();
      await throttle(page, 1);
      await stillDrawn(page);
      const after = await shown(page);
      expect(after.spot).not.toBe(before.spot);
      expect(after.expected).not.toBe(before.expected);
      expect(after.contours.pixels).toBeGreaterThan(500);
      expect(after.contours.print).not.toBe(before.contours.print);
      expect({ longTasksMs, longHandlersMs }).toEqual({ longTasksMs: [], longHandlersMs: [] });
      expect(answeredMs).toBeLessThanOrEqual(ANSWERED_MS);
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
