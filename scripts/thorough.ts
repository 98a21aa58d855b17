/** `npm run thorough`: the slow tests whole, where `npm test` takes a sample of the longest; a quarter of an hour. */
import { spawnSync } from 'node:child_process';

const { status } = spawnSync('npm', ['run', 'slow'], {
  env: { ...process.env, LEEWAY_THOROUGH: '1', LEEWAY_KILLS: process.env['LEEWAY_KILLS'] ?? '20' },
  stdio: 'inherit',
  shell: process.platform === 'win32',
});
process.exitCode = status ?? 1;
