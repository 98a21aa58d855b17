import type { PGlite } from '@electric-sql/pglite';

/** Journal that may gather before it is worked into the tables. */
const JOURNAL_BYTES = 16 * 2 ** 20;
/** Writes between two looks at the journal. */
const LOOK_EVERY = 64;
/** Checkpoints between two vacuums. */
const VACUUM_EVERY = 16;

/**
 * Does what a server's background processes would: the embedded engine has one connection and nobody beside it. To be called before each write,
 * so that what fails here fails before anything is written.
 */
export function housekeeper(): (engine: PGlite) => Promise<void> {
  let writes = 0;
  let checkpoints = 0;
  return async (engine) => {
    if (++writes % LOOK_EVERY !== 0) return;
    const { rows } = await engine.query<{ bytes: number }>(
      'SELECT (pg_current_wal_insert_lsn() - redo_lsn)::float8 AS bytes FROM pg_control_checkpoint()',
    );
    if ((rows[0]?.bytes ?? 0) < JOURNAL_BYTES) return;
    await engine.exec('CHECKPOINT');
    if (++checkpoints % VACUUM_EVERY === 0) await engine.exec('VACUUM (ANALYZE)');
  };
}
