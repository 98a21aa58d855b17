import { expect, test } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import { startLeeway, type RunningLeeway } from './serving.ts';

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

const SIZES = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'desktop', width: 1280, height: 860 },
  { name: 'narrow', width: 320, height: 640 },
];

for (const { name, width, height } of SIZES) {
  test(`the first page tells the plan of the made-up hole at ${width} px`, async ({ page }) => {
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    page.on('requestfailed', (request) => said.push(`failed: ${request.url()}`));
    await page.setViewportSize({ width, height });
    const response = await page.goto(leeway.address, { timeout: 110_000 });
    expect(response?.status()).toBe(200);
    expect(response?.headers()['content-security-policy']).toContain("default-src 'none'");

    await expect(page.getByRole('heading', { level: 1 })).toContainText('The Saltings', { timeout: 30_000 });
    await expect(page.locator(`[${HOOKS.figure.attribute}=expected]`).first()).toHaveText(/^\d\.\d\d$/);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(sideways).toBeLessThanOrEqual(0);
    expect(said).toEqual([]);
    await page.screenshot({ path: `../test-results/first-page-${name}.png`, fullPage: true });
  });
}

test('health answers, another Host is turned away, and an unknown page is said to be unknown', async ({ request }) => {
  const health = await request.get(new URL('/health', leeway.address).href);
  expect([health.status(), await health.json()]).toEqual([200, { ok: true }]);
  const elsewhere = await request.get(leeway.address, { headers: { host: 'golf.example' } });
  expect(elsewhere.status()).toBe(421);
  const unknown = await request.get(new URL('/nothing', leeway.address).href);
  expect([unknown.status(), await unknown.text()]).toEqual([404, 'No such page.\n']);
});
