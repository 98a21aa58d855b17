import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import type { Fault } from '@leeway/contract';
import type { Database, Sql } from './sql.ts';

/** A step of the database's shape: `0001-records.sql`. */
export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly text: string;
}

const FOLDER = new URL('migrations/', import.meta.url);

/** Every step there is, in order. Their files are never changed once they were run somewhere. */
export const MIGRATIONS: readonly Migration[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.sql'))
  .toSorted()
  .map((name) => ({ number: Number(name.slice(0, 4)), name, text: readFileSync(new URL(name, FOLDER), 'utf8') }));

/** Every process that opens the database runs this; the lock lets one do it. */
const MIGRATION_LOCK = 7_304_511;

/**
 * Brings a database to the newest shape, in one transaction. Refused, with nothing done: a database that a newer program has migrated, or one
 * whose steps were not these.
 */
export async function migrate(
  database: Database,
  migrations: readonly Migration[] = MIGRATIONS,
): Promise<readonly Fault[]> {
  return database.transaction(async (sql) => {
    await sql.query('SELECT pg_advisory_xact_lock($1)', [MIGRATION_LOCK]);
    await sql.script(
      'CREATE TABLE IF NOT EXISTS public.leeway_migration (number integer PRIMARY KEY, name text NOT NULL, digest text NOT NULL, applied timestamptz NOT NULL DEFAULT now())',
    );
    const applied = await sql.query<Applied>(
      'SELECT number, name, digest FROM public.leeway_migration ORDER BY number',
    );
    const faults = applied.flatMap((step) => strange(step, migrations, database.place));
    if (faults.length === 0) for (const step of migrations.slice(applied.length)) await apply(sql, step);
    return faults;
  });
}

interface Applied {
  readonly number: number;
  readonly name: string;
  readonly digest: string;
}

async function apply(sql: Sql, { number, name, text }: Migration): Promise<void> {
  await sql.script(text);
  const values = [number, name, digestOf(text)];
  await sql.query('INSERT INTO public.leeway_migration (number, name, digest) VALUES ($1, $2, $3)', values);
}

const digestOf = (text: string): string => createHash('sha256').update(text).digest('hex');

function strange(step: Applied, migrations: readonly Migration[], place: string): readonly Fault[] {
  const known = migrations.find(({ number }) => number === step.number);
  if (known !== undefined && digestOf(known.text) === step.digest) return [];
  const newest = migrations.at(-1)?.number ?? 0;
  return [
    {
      code: known === undefined ? 'newer-store' : 'other-store',
      level: 'refused',
      file: place,
      found: `step ${step.number} of the database's shape, ${step.name}`,
      expected:
        known === undefined ? `at most step ${newest}: a newer program has used it` : `${known.name} as shipped`,
    },
  ];
}
