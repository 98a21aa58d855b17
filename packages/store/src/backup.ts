import { createHash } from 'node:crypto';
import fs from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Read } from '@leeway/contract';
import { refusedWhenFull } from './diskFull.ts';
import { syncFolder } from './files.ts';
import { copyKeys } from './keyCopies.ts';
import { COLUMNS } from './rows.ts';
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
 * all before. Beside it `keys.json` is written anew. The file is whole or not there. Refused: a name that is taken, a disk without room.
 */
export async function backUp(store: Store, path: string): Promise<Read<Backup>> {
  if (fs.existsSync(path))
    return {
      faults: [{ code: 'exists', level: 'refused', file: path, found: 'a file of this name', expected: 'a new name' }],
    };
  const folder = dirname(path);
  return refusedWhenFull(path, async () => {
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    const records = await writeBackup(store, `${path}.new`);
    fs.renameSync(`${path}.new`, path);
    syncFolder(folder);
    await copyKeys(store, join(folder, KEY_FILE));
    return { value: { path, records }, faults: [] };
  });
}

/** Writes and syncs the file, or leaves none; returns how many records it holds. */
async function writeBackup(store: Store, path: string): Promise<number> {
  const file = await open(path, 'w', 0o600);
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
    fs.rmSync(path, { force: true });
    throw error;
  } finally {
    await file.close();
  }
  return records;
}

/** All records in order, a page at a time: what is stored meanwhile comes after what was read, and is in this backup or the next. */
async function* pages({ database }: Store): AsyncGenerator<readonly BackupLine[]> {
  let after = 0;
  for (;;) {
    const page = await database.query<BackupLine>(
      `SELECT ${COLUMNS}, encode(r.digest, 'base64') AS digest
       FROM leeway.record AS r WHERE r.seq > $1 ORDER BY r.seq LIMIT ${PAGE}`,
      [after],
    );
    if (page.length === 0) return;
    yield page;
    after = page.at(-1)?.seq ?? after;
  }
}
