import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../testdata/temporary.ts';
import { takeOwnership } from './ownership.ts';

const HOLDER = `
  import { takeOwnership } from ${JSON.stringify(new URL('ownership.ts', import.meta.url).href)};
  if (takeOwnership(process.argv[1]) === undefined) process.exit(3);
  process.stdout.write('held');
  setInterval(() => undefined, 1000);
`;

test('a folder has one owner at a time, in one process and in two; a killed owner holds nothing', async () => {
  const folder = temporaryFolder();
  const holder = spawn(process.execPath, ['--input-type=module', '--eval', HOLDER, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await once(holder.stdout, 'data');
  expect(takeOwnership(folder)).toBeUndefined();
  const gone = once(holder, 'exit');
  holder.kill('SIGKILL');
  await gone;
  const mine = takeOwnership(folder);
  expect(mine).toBeDefined();
  expect(takeOwnership(folder)).toBeUndefined();
  mine?.release();
  takeOwnership(folder)?.release();
});
