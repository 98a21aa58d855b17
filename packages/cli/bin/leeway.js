#!/usr/bin/env node
// Plain JavaScript, so that a Node too old for TypeScript can still start the one that the install step brought, or say what is missing.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const NEEDED_MAJOR = 24;

if (Number.parseInt(process.versions.node, 10) >= NEEDED_MAJOR) {
  await import('../src/leeway.ts');
} else {
  const installed = fileURLToPath(new URL('../../../node_modules/.bin/node', import.meta.url));
  if (existsSync(installed)) {
    const run = spawnSync(installed, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' });
    process.exitCode = run.status ?? 1;
  } else {
    process.stderr.write(`leeway: found Node ${process.versions.node}; expected Node ${NEEDED_MAJOR} or later\n`);
    process.exitCode = 1;
  }
}
