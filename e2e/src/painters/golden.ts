import { expect, test } from '@playwright/test';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { compare, type Difference, isWithin } from './compare.ts';

/** Letters hinted otherwise by another build of the browser stay within this; a mark left out does not. */
const TOLERANCE: Difference = { fine: 40, broad: 6, whole: 0.5 };

/** Compares a picture with the one kept under a name, or keeps it when `GOLDEN=renew`. What differs is left in the test's output folder. */
export function matchGolden(name: string, picture: PNG): void {
  const path = fileURLToPath(new URL(`golden/${name}.png`, import.meta.url));
  if (process.env['GOLDEN'] === 'renew') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, PNG.sync.write(picture, { colorType: 2 }));
    return;
  }
  const found = test.info().outputPath(`${name}.png`);
  writeFileSync(found, PNG.sync.write(picture));
  expect(existsSync(path), `no golden picture ${name}; npm run golden keeps ${found}`).toBe(true);
  const difference = compare(PNG.sync.read(readFileSync(path)), picture);
  const said = `${name} differs from its golden picture by ${JSON.stringify(difference)}; see ${found}`;
  expect(isWithin(difference, TOLERANCE), said).toBe(true);
}
