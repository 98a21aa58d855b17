import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout. */
export const HOUSE = fileURLToPath(new URL('../../..', import.meta.url));

/** What the page is built from: its own files, the packages it bundles, and the versions of the libraries. */
const SOURCES = [
  'package-lock.json',
  'packages/web/index.html',
  'packages/web/build',
  ...['web', 'desk', 'chart', 'contract', 'engine'].map((name) => `packages/${name}/src`),
];

/** Tests and their data are no part of the page. */
const APART = /\.test\.tsx?$|(?:^|\/)testdata\//;

/** One hash of everything the page is built from. */
export async function hashOfSources(): Promise<string> {
  const hash = createHash('sha256');
  for (const source of SOURCES) {
    for (const path of await filesUnder(source)) hash.update(`${path}\0`).update(await readFile(join(HOUSE, path)));
  }
  return hash.digest('hex').slice(0, 20);
}

/** The file itself, or the files of a folder, in the order of the alphabet. */
async function filesUnder(source: string): Promise<readonly string[]> {
  if (/\.\w+$/.test(source)) return [source];
  const entries = await readdir(join(HOUSE, source), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(HOUSE.length))
    .filter((path) => !APART.test(path))
    .toSorted();
}
