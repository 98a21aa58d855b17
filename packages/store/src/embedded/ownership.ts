import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';

/** Held as long as the process has the folder open. */
export interface Ownership {
  release(): void;
}

/**
 * Takes a folder for this process alone; undefined when another has it. The lock is the operating system's own on the file `owner`, taken
 * through Node's SQLite: it goes with the process however that ends, so that a killed owner leaves nothing to clear away.
 */
export function takeOwnership(folder: string): Ownership | undefined {
  const file = new DatabaseSync(join(folder, 'owner'), { timeout: 0 });
  try {
    file.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    file.close();
    if (error instanceof Error && /locked|busy/i.test(error.message)) return undefined;
    throw error;
  }
  return { release: () => file.close() };
}
