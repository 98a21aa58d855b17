import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const MEMORY = '/dev/shm';

/** A new folder. */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'leeway-store-'));

/** A new folder in memory where the system has such: for tests of what a store does, not of how well it keeps. */
export const newMemoryFolder = (): string => mkdtempSync(join(existsSync(MEMORY) ? MEMORY : tmpdir(), 'leeway-store-'));

export const removeFolder = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** A folder that goes when the test has finished. */
export const temporaryFolder = (): string => untilFinished(newFolder());

/** A folder in memory that goes when the test has finished. */
export const temporaryMemoryFolder = (): string => untilFinished(newMemoryFolder());

function untilFinished(folder: string): string {
  onTestFinished(() => removeFolder(folder));
  return folder;
}
