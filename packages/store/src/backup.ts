import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Read } from '@leeway/contract';
import { syncFolder } from './files.ts';
import { copyKeys } from './keyCopies.ts';
import type { Store } from './store.ts';

/** The name of the copy of the keys beside the backups. */
export const KEY_FILE = 'keys.json';

export interface Backup {
  readonly path: string;
  readonly records: number;
}

/** What the first line of a backup says. */
export const BACKUP_FORMAT = 'leeway backup';
export const BACKUP_VERSION = 1;

const PAGE = 2000;

/** A record's line in a backup. */
export interface BackupLine {
  readonly seq: number;
  readonly owner: string;
  readonly id: string;
  readonly kind: string;
  readonly version: number;
  readonly supersedes: string | null;
  /** Base64. */
  readonly digest: string;
  readonly sealed: string;
}

/**
 * Writes a backup of all records as one file, a JSON value a line: a heading, the records as they are sealed, and last their count and a SHA-256 of
 * all before. Beside it `keys.json` is written anew. The file is whole or not there; one that exists is refused.
 */
export async function backUp(store: Store, path: string): Promise<Read<Backup>> {
  if (fs.existsSync(path))
    return {
      faults: [{ code: 'exists', level: 'refused', file: path, found: 'a file of this name', expected: 'a new name' }],
    };
  fs.mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const beside = `${path}.new`;
  const file = await open(beside, 'w', 0o600);
  const hash = createHash('sha256');
  const write = async (lines: readonly object[]): Promise<void> => {
    const text = lines.map((line) => `${JSON.stringify(line)}\n`).join('');
    hash.update(text);
    await file.writeFile(text);
  };
  let records = 0;
  try {
    await write([{ format: BACKUP_FORMAT, version: BACKUP_VERSION, store: store.id }]);
    for await (const page of pages(store)) {
      records += page.length;
      await write(page);
    }
    await write([{ records, sha256: hash.copy().digest('hex') }]);
    await file.sync();
  } catch (error) {
    await file.close();
    fs.rmSync(beside, { force: true });
    throw error;
  }
  await file.close();
  fs.renameSync(beside, path);
  syncFolder(dirname(path));
  await copyKeys(store, join(dirname(path), KEY_FILE));
  return { value: { path, records }, faults: [] };
}

/** All records in order, a page at a time: what is stored meanwhile comes after what was read, and is in this backup or the next. */
async function* pages({ database }: Store): AsyncGenerator<readonly BackupLine[]> {
  let after = 0;
  for (;;) {
    const page = await database.query<BackupLine>(
      `SELECT seq::float8 AS seq, owner, id, kind, version, supersedes,
         encode(digest, 'base64') AS digest, encode(sealed, 'base64') AS sealed
       FROM leeway.record WHERE seq > $1 ORDER BY seq LIMIT ${PAGE}`,
      [after],
    );
    if (page.length === 0) return;
    yield page;
    after = page.at(-1)?.seq ?? after;
  }
}
