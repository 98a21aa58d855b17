/** `npm test`: every check and test there is, and as the last line how many tests passed and failed. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closingLine, countAll } from './closing-line.ts';

const STEPS = ['ok', 'slow', 'browser'];

const root = fileURLToPath(new URL('..', import.meta.url));
const results = join(root, 'node_modules', '.cache', 'results');
const grounds = resolve(root, process.env['LEEWAY_GROUNDS'] ?? '../shared/reference/osm');

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });
const allPassed = STEPS.every(
  (step) =>
    spawnSync('npm', ['run', step], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' }).status === 0,
);
const counts = countAll(results);
if (!allPassed || counts.failed > 0) process.exitCode = 1;
process.stdout.write(`${closingLine(counts, existsSync(join(grounds, 'expected-counts.json')))}\n`);
