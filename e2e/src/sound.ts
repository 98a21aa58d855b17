import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** Nothing that axe finds, nothing that scrolls sideways, at this width and at 320 px. */
export async function isSound(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.flatMap(({ id, nodes }) => nodes.map((n) => `${id}: ${n.html.slice(0, 120)}`))).toEqual([]);
  const size = page.viewportSize();
  if (size === null) throw new Error('a page of no size');
  for (const width of [320, size.width]) {
    await page.setViewportSize({ ...size, width });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  }
}

/** With PICTURES=FOLDER the pages are kept as they look, to be looked at. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['PICTURES'];
  if (folder === undefined) return;
  await page.evaluate(() => scrollTo(0, 0));
  await page.screenshot({ path: join(folder, `${name}-${page.viewportSize()?.width}.png`), fullPage: true });
}
