/** Makes sure that a Chromium is there for the browser tests: finds it, or installs Debian's when run as root, or says what is missing. */
import { spawnSync } from 'node:child_process';
import { findChromium } from '../e2e/chromium.ts';

function install(): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const steps = [
    ['update', '-qq'],
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
  ];
  return steps.every((step) => {
    const run = spawnSync('apt-get', step, { env, encoding: 'utf8' });
    if (run.status !== 0) process.stderr.write(run.stderr ?? `${run.error?.message}\n`);
    return run.status === 0;
  });
}

if (findChromium() === undefined && process.env['CHROMIUM_PATH'] === undefined && process.getuid?.() === 0) {
  process.stdout.write('No Chromium yet; installing the one of Debian.\n');
  install();
}
const path = findChromium();
if (path === undefined) {
  process.stderr.write(
    'ensure-chromium: found no Chromium; expected one at CHROMIUM_PATH or in a usual place, or root rights to install it with apt-get\n',
  );
  process.exitCode = 1;
} else {
  process.stdout.write(`Chromium: ${path}\n`);
}
