import { expect, test } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import { say } from './say.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';

const MOST_ACTS = 12;
const MOST_FIELDS = 4;

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

test(`from nothing to a first own plan in at most ${MOST_ACTS} acts and ${MOST_FIELDS} typed fields`, async ({
  page,
}) => {
  let [acts, fields] = [0, 0];
  const press = async (name: string, role: 'button' | 'link' = 'button'): Promise<void> => {
    await page.getByRole(role, { name, exact: true }).click();
    acts++;
  };
  const type = async (label: RegExp, text: string): Promise<void> => {
    await page.getByLabel(label).fill(text);
    fields++;
  };
  await page.setViewportSize({ width: 1280, height: 860 });
  await page.goto(leeway.address);
  await press('Players', 'link');
  await press('Add a player');
  await type(/^Name/, 'Jory');
  await type(/^Handicap index/, '24');
  await press('Keep');
  await expect(page.getByRole('heading', { name: 'Jory' })).toBeVisible();
  await press('Ground', 'link');
  await type(/^Course/, 'Rill Meadow');
  await type(/^Length/, '165');
  await press('Keep it and plan it');
  await expect(page.locator(`main[${HOOKS.answer.attribute}=settled]`)).toBeVisible({ timeout: 90_000 });
  await expect(page.getByRole('heading', { level: 1 })).toContainText('par 3 from its length, 165 yd');
  await expect(page).toHaveURL(/ground=[0-9a-f-]{36}.*player=[0-9a-f-]{36}/);
  await expect(page.locator('.sure').first()).toContainText('no balls measured');
  say(`a first own plan after ${acts} acts and ${fields} typed fields`);
  expect(acts).toBeLessThanOrEqual(MOST_ACTS);
  expect(fields).toBeLessThanOrEqual(MOST_FIELDS);
});
