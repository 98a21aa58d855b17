import { expect, test } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import { startLeeway, type RunningLeeway } from './serving.ts';

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

test('the wind is turned by keys and by its knob, forecast or felt; the sum and the choice follow, and Escape puts it back', async ({
  page,
}) => {
  await page.goto(`${leeway.address}?hole=7`);
  const settled = page.locator(`main[${HOOKS.answer.attribute}=settled]`);
  await expect(settled).toBeVisible({ timeout: 60_000 });
  const wind = page.getByRole('slider', { name: 'Wind' }).first();
  const sum = page.getByRole('table');
  await expect(sum).toContainText('calm');
  await wind.focus();
  await wind.press('ArrowRight');
  await wind.press('Shift+ArrowRight');
  await expect(wind).toHaveAttribute('aria-valuenow', '6');
  await expect(wind).toHaveAttribute('aria-valuetext', '10 mph from 6 degrees, forecast');
  await expect(sum).toContainText('into', { timeout: 60_000 });
  await expect(settled).toBeVisible({ timeout: 60_000 });
  await wind.press('ArrowUp');
  await expect(wind).toHaveAttribute('aria-valuetext', '11 mph from 6 degrees, forecast');
  await page.getByText('felt', { exact: true }).click();
  await expect(wind).toHaveAttribute('aria-valuetext', '11 mph from 6 degrees, felt');
  await expect(page.getByRole('contentinfo')).toContainText('Wind 11 mph from 6°, felt');

  const box = await wind.boundingBox();
  if (box === null) throw new Error('the knob is not on the sheet');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 60, { steps: 4 });
  await expect(wind).not.toHaveAttribute('aria-valuenow', '6');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(wind).toHaveAttribute('aria-valuenow', '6');
});
