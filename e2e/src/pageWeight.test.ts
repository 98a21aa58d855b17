import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { buildWeb } from '@leeway/web';
import { HOOKS } from '@leeway/web/hooks';
import { PAGE_PATHS, PAGES } from '@leeway/web/pages';
import { say } from './say.ts';
import { startLeeway, type RunningLeeway } from './serving.ts';
import { stillDrawn } from './watched.ts';

const MOST_KB = 120;

let leeway: RunningLeeway;
test.beforeAll(async () => {
  leeway = await startLeeway();
});
test.afterAll(() => leeway.stop());

for (const name of PAGES) {
  test(`the scripts of the first load of the ${name} page weigh at most ${MOST_KB} kB gzipped, its worker's among them`, async ({
    page,
  }) => {
    const built = await buildWeb(() => undefined);
    const kbOf = (path: string): number => gzipSync(readFileSync(join(built, path)), { level: 9 }).length / 1000;
    const scripts = new Map<string, number>();
    page.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (/\.(?:m?js|wasm)$/.test(pathname) && !scripts.has(pathname)) scripts.set(pathname, Date.now());
    });
    // the page itself notes when its first chart is there: whoever looks from outside is late
    await page.addInitScript((drawn) => {
      const look = (): void => {
        if (document.querySelector(`[${drawn}]`) === null) requestAnimationFrame(look);
        else Object.assign(window, { drawnAt: Date.now() });
      };
      requestAnimationFrame(look);
    }, HOOKS.drawn);
    await page.goto(new URL(PAGE_PATHS[name], leeway.address).href);
    const ready = name === 'plan' ? page.locator(`[${HOOKS.drawn}]`).first() : page.getByRole('heading', { level: 1 });
    await expect(ready).toBeVisible({ timeout: 60_000 });
    const drawnAt = name === 'plan' ? await page.evaluate(() => (window as { drawnAt?: number }).drawnAt) : undefined;
    const first = [...scripts].flatMap(([path, at]) => (at <= (drawnAt ?? Infinity) ? [path] : []));
    const sum = first.reduce((total, path) => total + kbOf(path), 0);
    say(`${name}: ${first.map((path) => `${path} ${kbOf(path).toFixed(1)}`).join(', ')}: ${sum.toFixed(1)} kB`);
    expect(first.length).toBeGreaterThanOrEqual(2);
    expect(sum).toBeLessThanOrEqual(MOST_KB);
    if (name !== 'plan') return;
    await stillDrawn(page);
    const later = [...scripts.keys()].filter((path) => !first.includes(path));
    say(`${name}, when it is used: ${later.map((path) => `${path} ${kbOf(path).toFixed(1)}`).join(', ')} kB`);
  });
}
