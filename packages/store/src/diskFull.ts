import type { Read } from '@leeway/contract';

/** There is no room to write. Nothing of what was asked has been kept; it can be asked again when there is room. */
export class DiskFull extends Error {
  override readonly name = 'DiskFull';
  /** The folder, file or database that has no room. */
  readonly place: string;
  constructor(place: string, cause?: unknown) {
    super(`No room on the disk of ${place}.`, { cause });
    this.place = place;
  }
}

/** Whether an error says that a disk is full: PostgreSQL's SQLSTATE 53100, or Node's own code. */
export const saysFull = (error: unknown): boolean =>
  error instanceof DiskFull || ['53100', 'ENOSPC'].includes(String((error as { readonly code?: unknown }).code));

/** Does work; a full disk on the way is a refusal, any other error goes on. */
export async function refusedWhenFull<T>(place: string, work: () => Promise<Read<T>>): Promise<Read<T>> {
  try {
    return await work();
  } catch (error) {
    if (!saysFull(error)) throw error;
    const file = error instanceof DiskFull ? error.place : place;
    const expected = 'room to write; nothing of this was kept';
    return { faults: [{ code: 'disk-full', level: 'refused', file, found: 'no room on the disk', expected }] };
  }
}
