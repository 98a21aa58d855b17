/**
 * `npm run pictures`: the Plan page as it looks, one picture a hole at each of two widths. `HOLES=3,7` names the holes, `GROUND=FILE` another
 * course than the demo's, `OUT=FOLDER` where the pictures go (`docs/pictures` unless said; pictures of real ground stay outside the repository).
 */
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { HOOKS } from '@leeway/web/hooks';
import config from './playwright.config.ts';
import { startLeeway } from './src/serving.ts';

const WIDTHS = [
  { name: 'desk', width: 1280, height: 860 },
  { name: 'phone', width: 390, height: 844 },
];

const root = fileURLToPath(new URL('..', import.meta.url));
const from = process.env['INIT_CWD'] ?? root;
const out = process.env['OUT'] === undefined ? join(root, 'docs/pictures') : resolve(from, process.env['OUT']);
const holes = (process.env['HOLES'] ?? '3,5,7,10,12,17').split(',');
const ground = process.env['GROUND'];
mkdirSync(out, { recursive: true });

const leeway = await startLeeway(ground === undefined ? [] : ['--ground', resolve(from, ground)]);
const browser = await chromium.launch(config.use?.launchOptions);
try {
  for (const { name, ...viewport } of WIDTHS) {
    const page = await browser.newPage({ viewport });
    for (const hole of holes) {
      await page.goto(`${leeway.address}?hole=${hole}`);
      await page
        .locator(`main[${HOOKS.answer.attribute}=settled] [${HOOKS.drawn}]`)
        .first()
        .waitFor({ timeout: 120_000 });
      await page.waitForTimeout(600);
      const path = join(out, `hole-${hole}-${name}.png`);
      await page.screenshot({ path, fullPage: true });
      process.stdout.write(`${path}\n`);
    }
    await page.close();
  }
} finally {
  await browser.close();
  await leeway.stop();
}
