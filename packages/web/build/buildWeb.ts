import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { bundle } from './bundle.ts';
import { compress } from './compress.ts';
import { hashOfSources, HOUSE } from './sources.ts';

const CACHE = join(HOUSE, 'node_modules', '.cache', 'leeway-page');
/** Built pages that are kept: other checkouts of the same modules, and the one before a change. */
const KEPT = 4;

/**
 * The folder of the built page, with `index.html` in it. It is built when the sources have changed since it was last, which `tell` is told of; it
 * appears whole or not at all, also when two builds run at once.
 */
export async function buildWeb(tell: (line: string) => void): Promise<string> {
  const folder = join(CACHE, await hashOfSources());
  if (existsSync(folder)) {
    const now = new Date();
    await utimes(folder, now, now);
    return folder;
  }
  tell('building the page, since its sources have changed');
  const started = performance.now();
  const beside = `${folder}.${randomBytes(4).toString('hex')}`;
  try {
    await mkdir(beside, { recursive: true });
    await bundle(beside);
    await compress(beside);
    await rename(beside, folder).catch((error: unknown) => {
      if (!existsSync(folder)) throw error;
    });
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
  await removeOld();
  tell(`built the page in ${((performance.now() - started) / 1000).toFixed(1)} s`);
  return folder;
}

async function removeOld(): Promise<void> {
  const names = await readdir(CACHE);
  const built = await Promise.all(names.map(async (name) => ({ name, at: (await stat(join(CACHE, name))).mtimeMs })));
  const old = built.toSorted((a, b) => b.at - a.at).slice(KEPT);
  await Promise.all(old.map(({ name }) => rm(join(CACHE, name), { recursive: true, force: true })));
}
