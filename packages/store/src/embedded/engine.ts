import fs from 'node:fs';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { syncFolder, syncTree } from '../files.ts';
import { SyncedFiles } from './syncedFiles.ts';

/** An open engine, and what it has synced. */
export interface Engine {
  readonly sql: PGlite;
  readonly files: SyncedFiles;
}

/** The engine's own defaults without `-F`, which switches syncing off. */
const START = PGlite.defaultStartParams.filter((parameter) => parameter !== '-F');

/** `fsync` for the journal, because the engine's `fdatasync` never reaches the disk; small buffers and a small journal, because it is one coach's folder. */
const SETTINGS = [
  'fsync=on',
  'synchronous_commit=on',
  'full_page_writes=on',
  'wal_sync_method=fsync',
  'shared_buffers=32MB',
  'max_wal_size=32MB',
  'min_wal_size=4MB',
];

const JOURNAL_SEGMENT = ['--wal-segsize=1'];

/**
 * Opens the database `database` in a folder, made first if there is none (two or three seconds). It is made beside and renamed, so that a start
 * that was broken off leaves nothing that could be taken for a database.
 */
export async function openEngine(folder: string): Promise<Engine> {
  const path = join(folder, 'database');
  if (!fs.existsSync(path)) await makeDatabase(folder, path);
  return start(path);
}

async function makeDatabase(folder: string, path: string): Promise<void> {
  const beside = join(folder, 'database.new');
  fs.rmSync(beside, { recursive: true, force: true });
  const engine = await start(beside);
  await engine.sql.close();
  await syncTree(beside);
  fs.renameSync(beside, path);
  syncFolder(folder);
}

async function start(path: string): Promise<Engine> {
  // The engine's own lock file: whoever comes here holds the folder, and one that was cut short would keep the engine from starting.
  fs.rmSync(join(path, 'postmaster.pid'), { force: true });
  const files = new SyncedFiles(path);
  const sql = await PGlite.create({
    fs: files,
    initDbStartParams: JOURNAL_SEGMENT,
    startParams: [...START, ...SETTINGS.flatMap((setting) => ['-c', setting])],
  });
  return { sql, files };
}

/** Proves that a commit reaches the disk, with one that holds nothing but a note in the journal: throws when the engine answers without having asked for a sync. */
export async function proveSync({ sql, files }: Engine): Promise<void> {
  const before = files.syncs;
  await sql.query(`SELECT pg_logical_emit_message(true, 'leeway', 'sync')`);
  if (files.syncs === before) throw new Error('The embedded database commits without a sync: it is not safe to use.');
}
