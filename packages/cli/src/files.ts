import { randomBytes } from 'node:crypto';
import { link, lstat, mkdir, open, realpath, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Fault, GROUND_CAPS, type Read } from '@leeway/contract';

/** Most bytes that a file of each kind may have; larger ones are refused before they are read. */
export const CAP_BYTES = { player: 16e6, shots: 64e6, ground: GROUND_CAPS.characters } as const;

const CHUNK_BYTES = 1 << 20;

/**
 * Reads a file of at most `capBytes` bytes. A folder, a missing file and a larger file are refused; a regular file that is too large
 * is refused by its size, before anything is read, and a pipe as soon as it has given too much.
 */
export async function readBytesCapped(path: string, capBytes: number): Promise<Read<Uint8Array>> {
  try {
    const handle = await open(path, 'r');
    try {
      const stat = await handle.stat();
      if (stat.isDirectory()) return refused('not-a-file', path, 'a folder', 'a file');
      if (stat.isFile() && stat.size > capBytes) return tooLarge(path, inMegabytes(stat.size), capBytes);
      const chunks: Uint8Array[] = [];
      let total = 0;
      for (;;) {
        const chunk = new Uint8Array(Math.min(CHUNK_BYTES, capBytes + 1 - total));
        const { bytesRead } = await handle.read(chunk, 0, chunk.length, null);
        if (bytesRead === 0) return { value: Buffer.concat(chunks, total), faults: [] };
        total += bytesRead;
        if (total > capBytes) return tooLarge(path, `more than ${inMegabytes(capBytes)}`, capBytes);
        chunks.push(chunk.subarray(0, bytesRead));
      }
    } finally {
      await handle.close();
    }
  } catch (error) {
    return refused('cannot-read', path, wordSystemError(error), 'a file that can be read');
  }
}

/** Reads a UTF-8 text file of at most `capBytes` bytes, without its byte order mark. Refuses as `readBytesCapped`, and any other encoding. */
export async function readTextCapped(path: string, capBytes: number): Promise<Read<string>> {
  const read = await readBytesCapped(path, capBytes);
  if (read.value === undefined) return { faults: read.faults };
  try {
    return { value: new TextDecoder('utf-8', { fatal: true }).decode(read.value), faults: read.faults };
  } catch {
    return refused('not-utf-8', path, 'bytes that are not UTF-8 text', 'a text file in UTF-8');
  }
}

/**
 * Writes a file whole or not at all: beside its place, synced, then renamed. Missing folders are made. Gives the faults: none when
 * the file was written. An existing file is refused unless `force`; so is anything that is not a regular file.
 */
export async function writeBeside(
  path: string,
  bytes: string | Uint8Array,
  options: { readonly force: boolean },
): Promise<readonly Fault[]> {
  try {
    const present = await lstat(path).catch(() => undefined);
    const target = present?.isSymbolicLink() ? await realpath(path) : path;
    const old = present?.isSymbolicLink() ? await lstat(target) : present;
    if (old && !old.isFile()) return refused('not-a-file', path, 'a folder or a device', 'a file to write').faults;
    if (old && !options.force) return alreadyThere(path);
    await mkdir(dirname(target), { recursive: true });
    const beside = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}`);
    try {
      await writeSynced(beside, bytes, old ? old.mode & 0o777 : 0o644);
      if (options.force) await rename(beside, target);
      else await renameToFree(beside, target);
    } finally {
      await rm(beside, { force: true });
    }
    await syncFolder(dirname(target));
    return [];
  } catch (error) {
    if (codeOf(error) === 'EEXIST' && !options.force) return alreadyThere(path);
    return refused('cannot-write', path, wordSystemError(error), 'a place that can be written').faults;
  }
}

async function writeSynced(path: string, bytes: string | Uint8Array, mode: number): Promise<void> {
  const handle = await open(path, 'wx', mode);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Gives a file its name only while the name is free, in one step where the file system has hard links. */
async function renameToFree(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw error;
    await rename(from, to);
  }
}

/** Makes a rename last through a power cut; some systems cannot sync a folder, and there the rename stands as it is. */
async function syncFolder(path: string): Promise<void> {
  const handle = await open(path, 'r').catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}

function refused(code: string, file: string, found: string, expected: string): { readonly faults: readonly Fault[] } {
  return { faults: [{ code, level: 'refused', file, found, expected }] };
}

const tooLarge = (path: string, found: string, capBytes: number) =>
  refused('too-large', path, found, `at most ${inMegabytes(capBytes)}`);

const alreadyThere = (path: string) =>
  refused('already-there', path, 'a file of that name', 'a new name, or --force to replace it').faults;

const inMegabytes = (bytes: number): string =>
  bytes < 1e6 ? `${bytes} bytes` : `${(bytes / 1e6).toLocaleString('en-GB', { maximumFractionDigits: 1 })} MB`;

const codeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;

const SYSTEM_WORDS: { readonly [code: string]: string } = {
  ENOENT: 'no such file or folder',
  EACCES: 'no permission',
  EPERM: 'no permission',
  EISDIR: 'a folder',
  ENOTDIR: 'a file where the path needs a folder',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'symbolic links that go round in a circle',
  ENOSPC: 'no space left',
  EROFS: 'a place that can only be read',
};

/** A system error in words, or its code. */
export function wordSystemError(error: unknown): string {
  const code = codeOf(error);
  if (code !== undefined) return SYSTEM_WORDS[code] ?? `the system error ${code}`;
  return error instanceof Error ? error.message : String(error);
}
