import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { prepareFolder } from '../testdata/preparedFolder.ts';
import { newId } from '../testdata/records.ts';
import { temporaryFolder } from '../testdata/temporary.ts';

const WRITER = fileURLToPath(new URL('../testdata/writer.ts', import.meta.url));
const hasTracer = spawnSync('strace', ['-V']).status === 0;

/** Whether the system lets one process trace another is known only by trying. */
const canTrace = hasTracer && spawnSync('strace', ['-o', '/dev/null', 'true']).status === 0;

/** Syncs that the tracer tells in two lines, since another process called meanwhile, whole where they end; other calls where they begin. */
function wholeSyncs(lines: readonly string[]): string[] {
  const begun = new Map<string, string>();
  return lines.map((line) => {
    const [, process = '', rest = ''] = /^(\d+)\s+(.*)$/.exec(line) ?? [];
    if (rest.endsWith('<unfinished ...>')) begun.set(process, line.replace('<unfinished ...>', ''));
    const resumed = /^<\.\.\. fsync resumed>(.*)$/.exec(rest);
    return resumed === null ? line : `${begun.get(process) ?? ''}${resumed[1]}`;
  });
}

test.skipIf(!canTrace)(
  'the system’s own calls show the journal synced before each answer',
  { timeout: 120_000 },
  async () => {
    const folder = temporaryFolder();
    const trace = join(temporaryFolder(), 'trace');
    await prepareFolder(folder);
    const calls = ['-f', '-y', '-e', 'trace=write,pwrite64,fsync,fdatasync', '-o', trace];
    execFileSync('strace', [...calls, process.execPath, WRITER, folder, newId(), '40'], { stdio: 'ignore' });
    const lines = wholeSyncs(readFileSync(trace, 'utf8').split('\n'));
    const answers = lines.flatMap((line, i) => (/write\(1<.*"kept /.test(line) ? [i] : []));
    expect(answers).toHaveLength(40);
    answers.slice(1).forEach((at, i) => {
      const since = lines.slice(answers[i], at);
      const lastWrite = since.findLastIndex((line) => line.includes('pwrite64(') && line.includes('/pg_wal/'));
      const lastSync = since.findLastIndex((line) => /fsync\(\d+<.*\/pg_wal\/.*= 0/.test(line));
      expect(lastWrite).toBeGreaterThan(-1);
      expect(lastSync).toBeGreaterThan(lastWrite);
    });
  },
);
