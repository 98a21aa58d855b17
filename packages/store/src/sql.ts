import type { DatabaseOptions } from 'pg-boss';

/** Statements against a database or inside one transaction. Placeholders are `$1`; rows come back as objects. */
export interface Sql {
  query<Row extends object>(text: string, values?: readonly unknown[]): Promise<readonly Row[]>;
  /** Several statements without values. */
  script(text: string): Promise<void>;
}

/**
 * What the store asks of a database: the same of both. What is answered is on stable storage: `query`, `script` and `transaction` return after
 * the commit was synced.
 */
export interface Database extends Sql {
  /** Where it is, as a person would say it. */
  readonly place: string;
  /** All or nothing. The work uses the statements it is given: a call of the database itself would wait for it for ever. */
  transaction<T>(work: (sql: Sql) => Promise<T>): Promise<T>;
  /** Throws `DiskFull` when so many bytes more could not be written with some to spare. */
  assertRoom(bytes: number): void;
  /** What the job queue needs to run on it. */
  readonly forJobs: Pick<DatabaseOptions, 'db' | 'connectionString'> & { readonly backend: 'postgres' | 'pglite' };
  close(): Promise<void>;
}
