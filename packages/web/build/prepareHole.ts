import { createHash, randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { OpenAsk } from '../src/asks.ts';
import type { Fetch } from '../src/worker/fetched.ts';
import { solveRead } from '../src/worker/openHole.ts';
import { readHole } from '../src/worker/readHole.ts';
import { prepare, writePrepared } from '../src/worker/prepared.ts';
import { compress } from './compress.ts';

const AT_ONCE = { pause: () => Promise.resolve() };

/**
 * Works out a hole for a player beforehand, by the worker's own code, and puts it into the folder of the built page; gives its address there. What is
 * there already for these files and these sources is left. `tell` is told when it takes a while.
 */
export async function prepareHole(
  page: string,
  ask: Omit<OpenAsk, 'units'>,
  fetched: Fetch,
  tell: (line: string) => void,
): Promise<string> {
  const hole = ask.ground.holes.find((h) => h.hole === ask.hole);
  // the folder's name is the hash of the sources, and the addresses end in hashes of what is there
  const inputs = JSON.stringify([basename(page), hole?.url, ask.player.url]);
  const name = createHash('sha256').update(inputs).digest('hex').slice(0, 20);
  const folder = join(page, 'prepared', name);
  if (!existsSync(folder)) {
    tell(`working out hole ${ask.hole} beforehand for ${ask.player.name}`);
    const open = await solveRead(await readHole({ ...ask, units: 'yd' }, fetched), AT_ONCE);
    const beside = `${folder}.${randomBytes(4).toString('hex')}`;
    try {
      await mkdir(beside, { recursive: true });
      await writeFile(join(beside, 'hole.json'), writePrepared(prepare(open)));
      await compress(beside);
      await rename(beside, folder).catch((error: unknown) => {
        if (!existsSync(folder)) throw error;
      });
    } finally {
      await rm(beside, { recursive: true, force: true });
    }
  }
  return `/prepared/${name}/hole.json`;
}
