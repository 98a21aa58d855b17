import { randomUUID } from 'node:crypto';
import { expect, test } from '@playwright/test';
import { keepPlayer } from './keptPlayer.ts';
import { isSound, picture } from './sound.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { figure, handle, openPlan } from './watched.ts';

let leeway: RunningLeeway;
const owner = randomUUID();
test.beforeAll(async ({ request }) => {
  leeway = await startLeeway();
  await keepPlayer(request, leeway.address, owner);
});
test.afterAll(() => leeway.stop());

const SIZES = [
  { width: 390, height: 844 },
  { width: 1280, height: 860 },
];

for (const size of SIZES) {
  test(`the answer stays hidden until club and spot are chosen, and the choice is kept with its reason: ${size.width} px`, async ({
    page,
  }) => {
    const told: string[] = [];
    page.on('console', (message) => told.push(message.text()));
    page.on('pageerror', (error) => told.push(error.message));
    await page.setViewportSize(size);
    await openPlan(page, `${leeway.address}?hole=12&player=${owner}`);
    await page.getByRole('button', { name: 'You first' }).click();
    await expect(page.getByRole('heading', { name: 'You first' })).toBeVisible();
    // neither seen nor said
    await expect(figure(page, 'expected')).toHaveCount(0);
    await expect(figure(page, 'option')).toHaveCount(0);
    await expect(page.locator('#chart-words')).toContainText('par 4', { timeout: 30_000 });
    await expect(page.locator('#chart-words')).not.toContainText(/expected|room|iron|wood|driver/i, { timeout: 100 });
    const show = page.getByRole('button', { name: 'Show the answer' }).filter({ visible: true });
    await expect(show).toBeDisabled();
    await page.getByLabel('Club and swing').selectOption({ label: '5-iron, full' });
    await expect(show).toBeDisabled();
    const chart = await page.locator('.sheet').boundingBox();
    if (chart === null) throw new Error('there is no chart');
    const middle = { x: chart.x + chart.width / 2 - 20, y: chart.y + chart.height * 0.45 };
    if (size.width < 640) await page.mouse.click(middle.x, middle.y);
    else {
      await handle(page, 'spot').focus();
      await page.keyboard.press('ArrowLeft');
    }
    await expect(page.getByText(/^Your spot: .*(flag|out)/)).toBeVisible();
    await page.evaluate(() => scrollTo(0, 0));
    await picture(page, 'first-hidden');
    await isSound(page);
    await show.click();
    await expect(figure(page, 'costsMore')).toHaveText(/^\d\.\d\d more/, { timeout: 60_000 });
    await expect(page.getByText(/^Your spot: 5-iron, full/)).toBeVisible();
    await expect(figure(page, 'expected')).toHaveText(/^\d\.\d\d$/);
    const cost = await figure(page, 'costsMore').innerText();

    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    const keep = page.getByRole('button', { name: 'Keep your choice' });
    await expect(keep).toBeDisabled();
    await page.getByLabel('Why this one').fill(`Sees the whole green, ${size.width}.`);
    await keep.click();
    const kept = page.locator('.kept li').filter({ hasText: `${size.width}.` });
    await expect(kept).toContainText(/^Kept on \d+ \w+ \d{4}, calm: 5-\u2060?iron, full/, { timeout: 60_000 });
    await expect(kept).toContainText(cost.slice(0, 4));
    await page.evaluate(() => scrollTo(0, 0));
    await picture(page, 'first-shown');
    await isSound(page);

    // still there after the page was loaded anew; gone only after it was asked
    await openPlan(page, page.url());
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await kept.getByRole('button', { name: /^take it away:/ }).click();
    await kept.getByRole('button', { name: 'Leave it' }).click();
    await expect(kept).toBeVisible();
    await kept.getByRole('button', { name: /^take it away:/ }).click();
    await kept.getByRole('button', { name: 'Take it away' }).click();
    await expect(kept).toHaveCount(0);
    expect(told).toEqual([]);
  });
}
