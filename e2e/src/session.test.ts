import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { keep, made } from './kept.ts';
import { startLeeway } from './serving.ts';
import { isSound, picture } from './sound.ts';

const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
];

/** A player with three carries from memory, through the pages' own address. */
async function playerWithCarries(page: Page, address: string): Promise<string> {
  const owner = crypto.randomUUID();
  const body = {
    name: 'Tilda Brook',
    handicapIndex: 17,
    clubs: [
      { name: 'driver', claimedCarryM: 185 },
      { name: '7-iron', claimedCarryM: 125 },
      { name: 'PW', claimedCarryM: 92 },
    ],
  };
  await keep(page, address, `${owner}/profiles`, [made(body)]);
  return owner;
}

const rowsOfLast = (page: Page) => page.locator('.last tbody tr');

for (const size of SIZES) {
  test(`a session: keyed, typed, tapped, undone, mishit, cut off, loaded anew, and on the ladder: ${size.width} px`, async ({
    page,
    context,
  }) => {
    test.setTimeout(180_000);
    const told: string[] = [];
    page.on('pageerror', (error) => told.push(error.message));
    await page.setViewportSize(size);
    const data = mkdtempSync(join(tmpdir(), 'leeway-session-'));
    const leeway = await startLeeway([], data);
    try {
      const owner = await playerWithCarries(page, leeway.address);
      await page.goto(new URL(`/carries?player=${owner}`, leeway.address).href);
      await page.getByRole('link', { name: 'Hit a session' }).click();
      await page.getByLabel('Target line').fill('white post');
      await page.getByLabel('Wind').selectOption('left');
      await page.getByLabel('Its speed').fill('8');
      await page.getByLabel('Balls in all').fill('15');
      await isSound(page);
      await picture(page, 'session-before');
      await page.getByRole('button', { name: 'Begin' }).click();
      await expect(page.getByRole('heading', { name: 'PW, full' })).toBeVisible();
      await expect(page.getByText('Nobody ahead, the line clear.')).toBeVisible();

      // two by the keypad, the second with a side
      for (const key of ['1', '0', '1']) await page.getByRole('button', { name: key, exact: true }).click();
      await page.getByRole('button', { name: 'Keep this ball' }).click();
      for (const key of ['9', '8', 'left', '6']) await page.getByRole('button', { name: key, exact: true }).click();
      await expect(page.locator('.range canvas[data-drawn]')).toBeVisible();
      await picture(page, 'session-keyed');
      await page.getByRole('button', { name: 'Keep this ball' }).click();
      await expect(rowsOfLast(page).first()).toContainText('6 L');
      // three by the keyboard alone
      await page.keyboard.type('99');
      await page.keyboard.press('Enter');
      await page.keyboard.type('103r4');
      await page.keyboard.press('Enter');
      await expect(rowsOfLast(page).first()).toContainText('4 R');
      await page.keyboard.type('51');
      await page.keyboard.press('m');
      await expect(rowsOfLast(page).first()).toContainText('mishit');
      await expect(page.getByRole('heading', { name: '7-iron, full' })).toBeVisible();
      // no carry, no ball
      await page.keyboard.press('Enter');
      await expect(page.getByRole('alert')).toContainText('Key how far it flew');
      await expect(rowsOfLast(page)).toHaveCount(5);
      // one tapped, and undone with the one before it; that one is typed again
      await page.locator('.range canvas').click({ position: { x: 150, y: 90 } });
      await expect(page.getByLabel(/^carry/)).toHaveValue(/\d{2,3}/);
      await page.getByRole('button', { name: 'Keep this ball' }).click();
      await expect(rowsOfLast(page)).toHaveCount(6);
      for (const left of [5, 4]) {
        await page.getByRole('button', { name: 'Undo the last ball' }).click();
        await expect(rowsOfLast(page)).toHaveCount(left);
      }
      await expect(page.getByRole('heading', { name: 'PW, full' })).toBeVisible();
      await page.getByLabel(/^carry/).focus();
      await page.keyboard.type('52m');
      await expect(rowsOfLast(page)).toHaveCount(5);
      await isSound(page);

      // the line is cut, and the page loaded anew: nothing is lost
      await page.route('**/api/**', (route) => route.abort());
      await page.getByLabel(/^carry/).focus();
      await page.keyboard.type('133');
      await page.keyboard.press('Enter');
      await expect(page.getByText(/1 ball or change not with the server yet/)).toBeVisible();
      await page.unroute('**/api/**');
      await page.reload();
      await expect(rowsOfLast(page)).toHaveCount(6);
      await expect(page.getByText(/not with the server yet/)).toHaveCount(0);
      const kept = await page.request.get(new URL(`/api/players/${owner}/shots`, leeway.address).href);
      const { records } = (await kept.json()) as { records: { body: { carryM: number; readings?: object } }[] };
      expect(records.map(({ body }) => Math.round(body.carryM / 0.9144))).toEqual([101, 98, 99, 103, 52, 133]);
      expect(records[4]?.body.readings).toEqual({ strike: 'mishit' });
      await picture(page, 'session');

      await page.getByRole('button', { name: 'End the session' }).click();
      const wedge = page.getByRole('row', { name: /^PW, full/ });
      await expect(wedge).toContainText(/±\d/, { timeout: 60_000 });
      await expect(wedge.getByRole('cell', { name: '5', exact: true })).toBeVisible();
      await expect(page.locator('.ladder-chart[data-drawn]')).toBeVisible();
      await expect(page.locator('.notes li')).toHaveCount(1);
      expect(told).toEqual([]);
      await context.close();
    } finally {
      await leeway.stop();
      rmSync(data, { recursive: true, force: true });
    }
  });
}
