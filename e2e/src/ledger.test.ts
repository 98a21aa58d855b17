import { readFileSync } from 'node:fs';
import { DEMO } from '@leeway/demo';
import { expect, type Page, test } from '@playwright/test';
import { say } from './say.ts';
import { isSound, picture } from './sound.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';

const MOST_KEYS = 300;

/** A card of 85: clubs that are not the guess, sides, sand, water, a ball out and three putts among it. */
const CARD = [
  'rg2', 'fr,g2', 'g-3', 'frsg2', 'f7g2', 'rsg1', 'ffwg2', 'g2', 'r,fg-2', 'tfg2', 'fg2', 's=g2', 'frg2', 'ofrg2', 'f6r.g1', 'r-g2', 'rfg2', 'fg3',
]; // prettier-ignore

// a server a test: the account of a whole card takes minutes, and the next round would wait for it
let leeway: RunningLeeway;
test.beforeEach(async () => {
  leeway = await startLeeway();
});
test.afterEach(() => leeway.stop());

const SENT = { 'x-leeway': '1' };
const made = { madeAt: '2026-05-14T09:30:00Z' };

/** A player and the made-up course in the store; the player's id. */
async function store(page: Page): Promise<string> {
  const [owner, course] = [crypto.randomUUID(), crypto.randomUUID()];
  const { version: _version, patterns: _patterns, ...profile } = JSON.parse(readFileSync(DEMO.player, 'utf8'));
  const ground = { file: 'tolvane.geojson', text: readFileSync(DEMO.ground, 'utf8') };
  const post = async (path: string, id: string, body: object): Promise<void> => {
    const url = new URL(path, leeway.address).href;
    const answer = await page.request.post(url, { headers: SENT, data: { records: [{ id, ...made, body }] } });
    expect(answer.status(), await answer.text()).toBe(200);
  };
  const courses = await (await page.request.get(new URL('/api/courses', leeway.address).href)).json();
  if (courses.courses.length === 0) await post('/api/house/courses', course, { name: 'Tolvane Links', ground });
  await post(`/api/players/${owner}/profiles`, crypto.randomUUID(), profile);
  return owner;
}

test(`a card of 18 holes is entered with the keyboard in at most ${MOST_KEYS} keys`, async ({ page }) => {
  test.setTimeout(900_000);
  const owner = await store(page);
  await page.addInitScript(() => {
    Object.assign(window, { keys: 0 });
    addEventListener(
      'keydown',
      () => Object.assign(window, { keys: (window as unknown as { keys: number }).keys + 1 }),
      true,
    );
  });
  await page.goto(new URL(`/ledger?player=${owner}`, leeway.address).href);
  await page.getByRole('button', { name: 'Enter a round' }).press('Enter');
  await expect(page.locator('.holes input')).toHaveCount(18);
  await page.getByLabel('Played on').focus();
  await page.keyboard.type('05142026');
  await page.locator('.holes input').first().focus();
  for (const hole of CARD) await page.keyboard.type(hole);
  await expect(page.locator('.holes .score').last()).toHaveText('5');
  await expect(page.getByRole('status').filter({ hasText: 'Total' })).toHaveText('Total 85');
  await isSound(page);
  await picture(page, 'ledger-card');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Kept\. The account|in 100 done|Solving the holes/).first()).toBeVisible();
  const keys = await page.evaluate(() => (window as unknown as { keys: number }).keys);
  say(`a card of 18 holes: ${keys} keys`);
  expect(keys).toBeLessThanOrEqual(MOST_KEYS);
  const { records } = await (
    await page.request.get(new URL(`/api/players/${owner}/strokes`, leeway.address).href)
  ).json();
  const penalties = records.reduce(
    (sum: number, r: { body: { penaltyStrokes?: number } }) => sum + (r.body.penaltyStrokes ?? 0),
    0,
  );
  expect(records.length + penalties).toBe(85);
  if (process.env['PICTURES'] === undefined) return;
  await expect(page.locator('.account')).toBeVisible({ timeout: 800_000 });
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 860 });
    await picture(page, 'ledger');
  }
});

for (const width of [390, 1280]) {
  test(`a hole that was played is kept, accounted for, and every figure opens its shots: ${width} px`, async ({
    page,
  }) => {
    test.setTimeout(300_000);
    const told: string[] = [];
    page.on('pageerror', (error) => told.push(error.message));
    await page.setViewportSize({ width, height: 860 });
    const owner = await store(page);
    await page.goto(new URL(`/ledger?player=${owner}`, leeway.address).href);
    await expect(page.getByText('No rounds yet.')).toBeVisible();
    await isSound(page);
    await page.getByRole('button', { name: 'Enter a round' }).click();
    await page.getByLabel('Hole 3', { exact: false }).fill('rg2');
    await expect(page.locator('.holes li').nth(2)).toContainText('rough');
    await isSound(page);
    await page.getByRole('button', { name: 'Keep the round' }).click();
    await expect(page.locator('.account')).toBeVisible({ timeout: 280_000 });
    await expect(page.locator('.strip button')).toHaveCount(1);
    await expect(page.getByRole('img', { name: /^Hole 3: 4 strokes/ })).toBeVisible();
    await expect(page.locator('.headline')).toContainText('Tolvane Links');
    const rows = page.locator('.account tbody').first().locator('tr');
    const figures = await rows.locator('.strong').allInnerTexts();
    expect(figures).toHaveLength(5);
    await page.getByRole('button', { name: 'Short game', exact: true }).click();
    await expect(page.locator('.behind-row')).toContainText('Short game');
    await page.locator('.strip button').click();
    await expect(page.locator('.behind-hole tbody tr')).toHaveCount(4);
    await isSound(page);
    await picture(page, 'ledger-hole');
    expect(told).toEqual([]);
  });
}
