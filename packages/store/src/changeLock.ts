import type { Sql } from './sql.ts';

const CHANGE_LOCK = 7_304_512;

/**
 * Lets one transaction at a time change the records, on all connections of all processes, until it ends. So the numbers of changes come in the order
 * of their commits: a phone that has read up to one can never be given a smaller one later.
 */
export const lockChanges = (sql: Sql): Promise<unknown> => sql.query('SELECT pg_advisory_xact_lock($1)', [CHANGE_LOCK]);
