import { defineConfig } from '@playwright/test';
import { findChromium } from './chromium.ts';

const executablePath = findChromium();

/** One browser, found on this machine; every page it opens is served from this machine, and nothing else is reachable. */
export default defineConfig({
  testDir: 'src',
  outputDir: '../test-results',
  workers: 1,
  forbidOnly: true,
  timeout: 120_000,
  reporter: [['list'], ['json', { outputFile: '../node_modules/.cache/results/browser.json' }]],
  use: {
    browserName: 'chromium',
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
      ],
    },
  },
});
