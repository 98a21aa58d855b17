import fs from 'node:fs';
import { DiskFull } from '../diskFull.ts';

/** What stays free whatever is written: room for the engine's journal, without which it could not go on, nor recover. */
const SPARE_BYTES = 8 * 2 ** 20;

/** Whether so many bytes can be written on a folder's disk with enough to spare. */
export function hasRoom(folder: string, bytes = 0): boolean {
  const { bavail, bsize } = fs.statfsSync(folder);
  return bavail * bsize >= SPARE_BYTES + bytes;
}

/** Throws `DiskFull` when they cannot. */
export function assertRoom(folder: string, bytes = 0): void {
  if (!hasRoom(folder, bytes)) throw new DiskFull(folder);
}
