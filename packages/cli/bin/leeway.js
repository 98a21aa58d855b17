#!/usr/bin/env node
// Plain JavaScript, so that a Node too old for TypeScript can still start the one that the install step brought, or say what is missing.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const NEEDED_MAJOR = 24;

if (Number.parseInt(process.versions.node, 10) >= NEEDED_MAJOR) {
  await import('../src/leeway.ts');
} else {
  const installed = fileURLToPath(new URL('../../../node_modules/.bin/node', import.meta.url));
  if (existsSync(installed)) {
    const run = spawn(installed, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' });
    // A terminal interrupts both; whoever ends this one by its number means the other.
    process.on('SIGINT', () => undefined);
    for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => run.kill(signal));
    run.on('exit', (code) => {
      process.exitCode = code ?? 1;
    });
  } else {
    process.stderr.write(`leeway: found Node ${process.versions.node}; expected Node ${NEEDED_MAJOR} or later\n`);
    process.exitCode = 1;
  }
}
