import { accessSync, constants } from 'node:fs';

const USUAL_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** The browser that the tests drive: `CHROMIUM_PATH`, else the first of the usual places that can be run. */
export function findChromium(): string | undefined {
  const named = process.env['CHROMIUM_PATH'];
  return (named ? [named] : USUAL_PATHS).find(canRun);
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
