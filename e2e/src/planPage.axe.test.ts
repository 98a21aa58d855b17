import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
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
];

async function found(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 120)}`));
}

for (const { name, ...size } of SIZES) {
  for (const light of ['paper', 'sun']) {
    test(`axe finds nothing on the Plan page: ${name}, ${light}, closed and open`, async ({ page }) => {
      const told: string[] = [];
      page.on('console', (message) => told.push(message.text()));
      page.on('pageerror', (error) => told.push(error.message));
      await page.setViewportSize(size);
      await page.goto(`${leeway.address}?light=${light}`);
      await expect(page.locator(`[${HOOKS.drawn}]`).first()).toBeVisible({ timeout: 60_000 });
      expect(await found(page)).toEqual([]);

      if (name === 'phone') {
        await page.locator('.title button').click();
        await page.locator('.edge .middle').click();
      }
      await page.getByRole('slider', { name: HOOKS.handles.spot, exact: true }).focus();
      await page.keyboard.press('ArrowLeft');
      await expect(page.locator(`[${HOOKS.figure.attribute}=costsMore]`)).toBeVisible({ timeout: 60_000 });
      await page.locator('[aria-controls=behind]').click();
      await expect(page.locator('.behind table')).toBeAttached({ timeout: 60_000 });
      await page.locator('.behind summary').click();
      await page.getByRole('button', { name: 'chances of the score' }).click();
      await expect(page.getByText(/^Par or better \d+ in 100, double or worse \d+\.$/)).toBeVisible({
        timeout: 60_000,
      });
      expect(await found(page)).toEqual([]);
      expect(told).toEqual([]);
    });
  }
}
