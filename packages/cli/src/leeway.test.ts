import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { main } from './main.ts';

const BIN = fileURLToPath(new URL('../bin/leeway.js', import.meta.url));

test('a reader that stops early ends the program quietly', async () => {
  const leeway = spawn(process.execPath, [BIN, '--help'], { stdio: ['ignore', 'pipe', 'pipe'] });
  leeway.stdout.destroy();
  let err = '';
  leeway.stderr.on('data', (data: Buffer) => (err += data.toString()));
  const [code] = (await once(leeway, 'close')) as [number];
  expect({ code, err }).toEqual({ code: 0, err: '' });
});

test('the program hands its exit code to the shell', async () => {
  const leeway = spawn(process.execPath, [BIN, 'plna'], { stdio: 'ignore' });
  const [code] = (await once(leeway, 'close')) as [number];
  expect(code).toBe(2);
});

test('serve on a port in use is one line and exit code 1', async () => {
  const other = createServer().listen(0, '127.0.0.1');
  await once(other, 'listening');
  const address = other.address();
  const port = typeof address === 'object' ? address?.port : undefined;
  let err = '';
  const code = await main(['serve', `--port=${port}`], { out: () => undefined, err: (text) => void (err += text) });
  other.close();
  expect(code).toBe(1);
  expect(err).toBe(`leeway serve: port ${port}: found it in use; expected a free port, or --port 0\n`);
});
