import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openEngine } from '../embedded/engine.ts';

const cache = fileURLToPath(new URL('../../../../node_modules/.cache/leeway-store/', import.meta.url));
const engineEntry = createRequire(import.meta.url).resolve('@electric-sql/pglite');

/**
 * Puts an empty embedded database into a folder. The engine takes seconds to make its first one; the tests make it once for a version of the engine
 * and copy it.
 */
export async function prepareFolder(folder: string): Promise<void> {
  const made = join(cache, createHash('sha256').update(engineEntry).update(versionOf()).digest('hex').slice(0, 16));
  if (!existsSync(made)) await make(made);
  cpSync(made, folder, { recursive: true });
}

function versionOf(): string {
  const { version } = createRequire(import.meta.url)(join(dirname(engineEntry), '..', 'package.json')) as {
    version: string;
  };
  return version;
}

async function make(made: string): Promise<void> {
  mkdirSync(cache, { recursive: true });
  const beside = mkdtempSync(join(cache, 'new-'));
  const engine = await openEngine(beside);
  await engine.sql.close();
  // Another test file may have been faster.
  if (existsSync(made)) rmSync(beside, { recursive: true });
  else renameSync(beside, made);
}
