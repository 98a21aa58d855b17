import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import { oddShots } from './oddShots.ts';
import { startLeeway } from './serving.ts';
import { isSound, picture } from './sound.ts';
import { figure } from './watched.ts';

const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1280, height: 860 },
];

/** Turns to a page by the running head; on a phone that is behind a pull on the title. */
async function turnTo(page: Page, name: string): Promise<void> {
  const pull = page.locator('.title button');
  if (await pull.isVisible()) await pull.click();
  await page.locator('#pages').getByRole('link', { name, exact: true }).click();
}

async function planned(page: Page): Promise<string> {
  await expect(page.locator(`main[${HOOKS.answer.attribute}=settled]`)).toBeVisible({ timeout: 90_000 });
  await expect(page.locator(`[${HOOKS.drawn}]`).first()).toBeVisible({ timeout: 60_000 });
  return figure(page, 'expected').innerText();
}

for (const size of SIZES) {
  test(`a new player, a file with odd headings, the ladder, a hole by numbers, its plan, and all of it after a restart: ${size.width} px`, async ({
    page,
  }) => {
    test.setTimeout(300_000);
    const told: string[] = [];
    page.on('pageerror', (error) => told.push(error.message));
    await page.setViewportSize(size);
    const data = mkdtempSync(join(tmpdir(), 'leeway-path-'));
    let leeway = await startLeeway([], data);
    try {
      await page.goto(new URL('/players', leeway.address).href);
      await page.getByRole('button', { name: 'Add a player' }).click();
      await page.keyboard.type('Tilda Brook');
      await page.keyboard.press('Tab');
      await page.keyboard.type('17,2');
      await isSound(page);
      await page.keyboard.press('Enter');
      await expect(page.getByRole('heading', { name: 'Tilda Brook' })).toBeVisible();
      await expect(page.getByRole('row', { name: /Tilda Brook/ })).toContainText('no carries yet');
      await page.getByLabel('A note').fill('Aims right of where she means to.');
      await page.getByRole('button', { name: 'Keep the note' }).click();
      await expect(page.getByText('Aims right of where she means to.')).toBeVisible();
      await isSound(page);
      await picture(page, 'players');

      await page.getByRole('region').or(page.locator('.aside')).getByRole('link', { name: 'Carries' }).click();
      await expect(page.getByText('No carries yet.')).toBeVisible();
      await page
        .locator('input[type=file]')
        .setInputFiles({ name: 'evening.csv', mimeType: 'text/csv', buffer: Buffer.from(oddShots()) });
      await expect(page.getByRole('button', { name: 'Keep them' })).toBeDisabled();
      for (const [heading, meaning] of [
        ['When', 'date'],
        ['Stick', 'club'],
        ['Flew (yd)', 'carry'],
      ] as const) {
        await page.getByLabel(`Meaning of ${heading}`).selectOption(meaning);
        await expect(page.getByLabel(`Meaning of ${heading}`)).toHaveValue(meaning);
        await expect(page.locator('.offered')).toHaveAttribute('aria-busy', 'false');
      }
      await expect(page.getByText('71 balls in 1 session: 14 May 2026')).toBeVisible();
      await expect(page.getByText(/Line 6: found .*21o/)).toBeVisible();
      await isSound(page);
      await picture(page, 'carries-file');
      await page.getByRole('button', { name: 'Keep them' }).click();
      const driver = page.getByRole('row', { name: /^Driver, full/ });
      await expect(driver).toContainText(/±\d/, { timeout: 60_000 });
      await expect(driver).toContainText('11');
      await expect(page.locator('.ladder tbody tr')).toHaveCount(6);
      await expect(page.locator('.ladder-chart[data-drawn]')).toBeVisible();
      await isSound(page);
      await picture(page, 'carries');

      await turnTo(page, 'Ground');
      await page.getByLabel('Course', { exact: true }).fill('Rill Meadow');
      await page.getByLabel(/^Length/).fill('385');
      await page.getByRole('button', { name: 'Add sand, water, trees or bounds' }).click();
      await page.keyboard.press('w');
      await page.keyboard.press('Tab');
      await page.keyboard.type('300');
      await page.keyboard.press('Tab');
      await page.keyboard.type('318');
      await page.locator('.hazard').getByText('across').click();
      await expect(page.locator('canvas.drawn')).toBeVisible();
      await isSound(page);
      await picture(page, 'ground');
      await page.getByRole('button', { name: 'Keep it and plan it' }).click();
      const expected = await planned(page);
      await expect(page.locator('.foot')).toContainText('numbers that were typed');
      const address = new URL(page.url());

      await leeway.stop();
      leeway = await startLeeway([], data);
      await page.goto(new URL(`${address.pathname}${address.search}`, leeway.address).href);
      expect(await planned(page)).toBe(expected);
      await turnTo(page, 'Carries');
      await expect(page.getByRole('row', { name: /^Driver, full/ })).toContainText(/±\d/);
      await turnTo(page, 'Players');
      await expect(page.getByText('Aims right of where she means to.')).toBeVisible();
      expect(told).toEqual([]);
    } finally {
      await leeway.stop();
      rmSync(data, { recursive: true, force: true });
    }
  });
}
