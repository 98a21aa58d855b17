import { expect, test } from '@playwright/test';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { figure, openPlan } from './watched.ts';

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

test('a worker that cannot be started is told on the page', async ({ page }) => {
  await page.route(/\/assets\/main-[^/]*\.js$/, (route) => route.abort());
  await page.goto(leeway.address);
  await expect(page.getByRole('alert')).toBeVisible();
});

test('files that do not come are told on the page', async ({ page }) => {
  await page.route('**/api/files/*', (route) => route.abort());
  await page.goto(leeway.address);
  await expect(page.getByRole('alert')).toBeVisible();
});

test('the choice shown at once, as worked out beforehand, is the one that the worker comes to', async ({ page }) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  await openPlan(page, leeway.address);
  expect(fetched.filter((path) => path.startsWith('/prepared/'))).toHaveLength(1);
  const before = await figure(page, 'expected').innerText();
  const spot = await figure(page, 'spot').innerText();

  const solved = await page.context().newPage();
  await solved.route('**/api/shelf', async (route) => {
    const shelf = (await (await route.fetch()).json()) as { grounds: { prepared: unknown[] }[] };
    for (const ground of shelf.grounds) ground.prepared = [];
    await route.fulfill({ json: shelf });
  });
  await openPlan(solved, leeway.address);
  expect(await figure(solved, 'expected').innerText()).toBe(before);
  expect(await figure(solved, 'spot').innerText()).toBe(spot);
});
