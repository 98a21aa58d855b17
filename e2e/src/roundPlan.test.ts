import { randomUUID } from 'node:crypto';
import { expect, type Page, test } from '@playwright/test';
import { keepPlayer } from './keptPlayer.ts';
import { say } from './say.ts';
import { isSound, picture } from './sound.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';

let leeway: RunningLeeway;
const owner = randomUUID();
test.beforeAll(async ({ request }) => {
  leeway = await startLeeway();
  await keepPlayer(request, leeway.address, owner);
});
test.afterAll(() => leeway.stop());

/** Five holes of the shelf's; all eighteen by `npm run thorough`. */
const HOLES = ['1', '2', '3', '4', '7'];
const thorough = process.env['LEEWAY_THOROUGH'] !== undefined;
const COUNT = thorough ? 18 : HOLES.length;

async function shorten(page: Page): Promise<void> {
  await page.route('**/api/shelf', async (route) => {
    const answer = await route.fetch();
    const shelf = (await answer.json()) as { grounds: { holes: { hole: string }[] }[] };
    for (const ground of shelf.grounds) ground.holes = ground.holes.filter(({ hole }) => HOLES.includes(hole));
    await route.fulfill({ response: answer, json: shelf });
  });
}

const strokesOn = (page: Page, hole: string) => page.locator(`tr[data-hole="${hole}"] .strokes-n`);

test('a round is planned for typed flags and wind, hole by hole, kept, printed on one page, opened again and taken away', async ({
  page,
}) => {
  test.setTimeout(420_000);
  const told: string[] = [];
  page.on('console', (message) => told.push(message.text()));
  page.on('pageerror', (error) => told.push(error.message));
  await page.setViewportSize({ width: 1280, height: 860 });
  if (!thorough) await shorten(page);
  await page.goto(new URL(`/?player=${owner}&hole=7`, leeway.address).href);
  await page.getByRole('link', { name: 'Whole round' }).click({ timeout: 90_000 });
  await expect(page.getByRole('heading', { name: 'Round plan', level: 1 })).toBeVisible();

  await page.getByLabel('Wind').fill('10');
  await page.getByLabel('blows from').fill('SW');
  await page.getByLabel('Flag on hole 1', { exact: true }).focus();
  for (const flag of ['bl', 'f', 'no such', '12,6R']) {
    await page.keyboard.type(flag);
    await page.keyboard.press('Enter');
  }
  const plan = page.getByRole('button', { name: 'Plan the round' });
  await expect(page.getByText('not a flag: bl, m, 16,7R')).toBeVisible();
  await expect(plan).toBeDisabled();
  await page.getByLabel('Flag on hole 3', { exact: true }).fill('mr');
  await isSound(page);
  await picture(page, 'round-asked');

  const began = Date.now();
  await plan.click();
  await expect(page.getByText(new RegExp(`^[1-9]\\d* of ${COUNT} holes planned\\.$`))).toBeVisible({
    timeout: 120_000,
  });
  await expect(page.getByText(`${COUNT} of ${COUNT} holes planned.`)).toBeVisible({ timeout: 300_000 });
  say(`a round of ${COUNT} holes with its chances: ${((Date.now() - began) / 1000).toFixed(1)} s by the clock`);
  const strokes = await page.locator('.strokes-n').allInnerTexts();
  expect(strokes).toHaveLength(COUNT);
  const sum = strokes.reduce((total, text) => total + Number(text), 0);
  const total = page.locator('[data-figure=round]');
  await expect(total).toHaveText(
    new RegExp(`^${sum.toFixed(1).replace('.', '\\.')} strokes expected on a par of \\d+`),
  );
  for (const row of await page.locator('td.line').allInnerTexts())
    expect(row).toMatch(/^(?:D|\d+[WHi]|PW|GW|SW|LW|\d+°)/);
  const chances = (await page.locator('tbody .chance').allInnerTexts()).map(Number);
  expect(chances.every((n) => n >= 0 && n <= 100)).toBe(true);
  await isSound(page);
  await picture(page, 'round');

  await page.getByRole('button', { name: 'Keep this round' }).click();
  await expect(page.locator('.kept-rounds li > p')).toHaveText(/^Kept on .* wind 10 mph from 225°: /);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 703, height: 1032 });
  await picture(page, 'round-print');
  await page.emulateMedia({ media: 'screen' });

  await page.setViewportSize({ width: 390, height: 844 });
  await picture(page, 'round');
  await isSound(page);

  // frozen: another wind changes the page, not what is kept
  const before = await strokesOn(page, '7').innerText();
  await page.getByLabel('Wind').fill('0');
  await expect(page.getByText(/have changed since/)).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: /^open/ }).click();
  await expect(strokesOn(page, '7')).toHaveText(before);
  await expect(page.locator('.round-title')).toContainText('wind 10 mph from 225°');
  await isSound(page);
  await picture(page, 'round-kept');
  await page.getByRole('button', { name: /^take it away/ }).click();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await page.getByRole('button', { name: /^take it away/ }).click();
  await page.getByRole('button', { name: 'Take it away' }).click();
  await expect(page.getByText('No round is kept')).toBeVisible();
  expect(told).toEqual([]);
});
