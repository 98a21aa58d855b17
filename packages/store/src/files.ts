import fs from 'node:fs';
import { open, readdir } from 'node:fs/promises';
import { join } from 'node:path';

/** Makes names in a folder durable: files that were made, renamed or removed. */
export function syncFolder(folder: string): void {
  // Windows keeps no handle of a folder to sync; its renames are journalled.
  if (process.platform === 'win32') return;
  const handle = fs.openSync(folder, 'r');
  try {
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
}

/** Makes all files under a folder, and their names, durable. The files go side by side: a disk takes many syncs in hardly more time than one. */
export async function syncTree(folder: string): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  const paths = entries.map((entry) => ({ entry, path: join(entry.parentPath, entry.name) }));
  await Promise.all(paths.filter(({ entry }) => entry.isFile()).map(({ path }) => syncFile(path)));
  for (const { entry, path } of paths) if (entry.isDirectory()) syncFolder(path);
  syncFolder(folder);
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Writes a file whole or not at all: beside, synced, renamed over. Only this account can read it. */
export function writeDurably(folder: string, name: string, content: string | Uint8Array): void {
  const beside = join(folder, `.${name}.${process.pid}.new`);
  const handle = fs.openSync(beside, 'w', 0o600);
  try {
    fs.writeFileSync(handle, content);
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
  fs.renameSync(beside, join(folder, name));
  syncFolder(folder);
}
