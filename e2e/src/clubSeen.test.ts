import { expect, type Page, test } from '@playwright/test';
import { keep, made } from './kept.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { isSound, picture } from './sound.ts';

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

const CARRIES_M = { driver: 192, '5-hybrid': 158, '7-iron': 131, '9-iron': 112, PW: 98 };
/** Places of balls about their middle, in shares of the carry and of its side, good strikes and two mishits. */
const SPREAD = Array.from({ length: 18 }, (_, i) => {
  const turn = (i * 0.618034) % 1;
  return i % 9 === 8
    ? [-0.35 - 0.1 * turn, 0.09 - 0.2 * turn]
    : [0.09 * (turn - 0.5), 0.13 * (((i * 0.4142) % 1) - 0.5)];
});

/** Two sessions five weeks apart; the 7-iron went 8 m further in the second. */
async function playerWithTwoSessions(page: Page): Promise<string> {
  const owner = crypto.randomUUID();
  await keep(page, leeway.address, `${owner}/profiles`, [made({ name: 'Tilda Brook', handicapIndex: 17 })]);
  for (const [date, more] of [
    ['2026-05-03', 0],
    ['2026-06-09', 8],
  ] as const) {
    const session = made({ date, purpose: 'range' });
    await keep(page, leeway.address, `${owner}/sessions`, [session]);
    const shots = Object.entries(CARRIES_M).flatMap(([club, m]) =>
      SPREAD.map(([along = 0, across = 0]) => {
        const carryM = (m + (club === '7-iron' ? more : 0)) * (1 + along);
        return made({ session: session.id, club, swing: 'full', carryM, sideM: carryM * across });
      }),
    );
    await keep(page, leeway.address, `${owner}/shots`, shots);
  }
  return owner;
}

for (const size of [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1280, height: 860 },
]) {
  test(`a club from above, and what changed between two days: ${size.width} px`, async ({ page }) => {
    const told: string[] = [];
    page.on('pageerror', (error) => told.push(error.message));
    await page.setViewportSize(size);
    const owner = await playerWithTwoSessions(page);
    await page.goto(new URL(`/carries?player=${owner}`, leeway.address).href);
    await page.getByRole('button', { name: 'Fit the new balls' }).click();
    const club = page.getByRole('button', { name: '7-iron, full', exact: true });
    await expect(page.getByRole('row', { name: /7-iron, full/ })).toContainText(/±\d/, { timeout: 60_000 });
    await club.focus();
    await page.keyboard.press('Enter');
    await expect(club).toHaveAttribute('aria-pressed', 'true');
    const seen = page.getByRole('region', { name: '7-iron, full' });
    await expect(seen).toContainText('36 balls, 4 mishit');
    await expect(seen.locator('canvas[data-drawn]')).toBeVisible();
    await expect(seen.getByRole('img')).toHaveAccessibleName(/7-iron, full from above: 36 balls, 4 of them mishit/);
    await isSound(page);
    await picture(page, 'club');
    await seen.getByLabel('Before').selectOption('3 May 2026');
    await seen.getByLabel('After').selectOption('9 June 2026');
    await expect(
      seen.getByText(/^Carry: 9 yd longer, four times in five from \d+ to \d+\. More than chance\.$/),
    ).toBeVisible();
    await expect(seen.getByText(/^Line: as before, .* May be chance\.$/)).toBeVisible();
    await isSound(page);
    await picture(page, 'club-two-days');
    expect(told).toEqual([]);
  });
}

for (const size of [
  { width: 390, height: 844 },
  { width: 1280, height: 860 },
]) {
  test(`pitch marks and misses are kept, fitted with the balls, and taken back: ${size.width} px`, async ({ page }) => {
    await page.setViewportSize(size);
    const owner = await playerWithTwoSessions(page);
    await page.goto(new URL(`/carries?player=${owner}`, leeway.address).href);
    const marks = page.locator('form.marks');
    await marks.getByLabel('Hit with').selectOption('7-iron, full');
    const fill = async (values: { readonly [label: string]: string }): Promise<void> => {
      for (const [label, value] of Object.entries(values)) await marks.getByLabel(label).fill(value);
    };
    await fill({ 'To the flag': '146', 'Green begins at': '150', 'Green ends at': '160', 'Green is wide': '26' });
    await marks.getByRole('button', { name: 'Keep it' }).click();
    await expect(marks.getByRole('alert')).toHaveText('It begins before the flag, ends after it, and has a width.');
    await fill({ 'Green begins at': '132', 'Mark from the flag': '4', 'Mark to the side': '3' });
    await marks.getByText('short', { exact: true }).click();
    await marks.getByText('left', { exact: true }).click();
    await isSound(page);
    await picture(page, 'marks');
    await marks.getByRole('button', { name: 'Keep it' }).click();
    await expect(marks).toContainText('1 approach, 1 mark');
    await fill({ 'To the flag': '150', 'Green begins at': '139', 'Green ends at': '165', 'Green is wide': '22' });
    await marks.getByLabel('Found').selectOption('no mark: short');
    await expect(marks.getByLabel('Mark from the flag')).toHaveCount(0);
    await marks.getByRole('button', { name: 'Keep it' }).click();
    await expect(marks).toContainText('2 approaches, 1 mark');
    await page.getByRole('button', { name: 'Fit the new balls' }).click();
    const row = page.getByRole('row', { name: /7-iron, full/ });
    await expect(row).toContainText(/±\d/, { timeout: 60_000 });
    await expect(row.getByRole('cell', { name: '37', exact: true })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Fit the new balls' })).toHaveCount(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(marks).toContainText('1 approach, 1 mark');
    await expect(page.getByRole('button', { name: 'Fit the new balls' })).toBeVisible();
    await page.reload();
    await expect(marks).toContainText('1 approach, 1 mark');
  });
}
