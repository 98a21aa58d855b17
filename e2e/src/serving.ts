import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const PATIENCE_MS = 2000;

/** `leeway serve` as a user starts it, on a free port. */
export interface RunningLeeway {
  readonly address: string;
  stop(): Promise<void>;
}

/**
 * Starts the server, on the demo unless the options say otherwise, and waits for the line that says where it is. It keeps things in a folder that goes with it,
 * unless one is given, which stays.
 */
export async function startLeeway(options: readonly string[] = [], folder?: string): Promise<RunningLeeway> {
  const leeway = fileURLToPath(new URL('../../packages/cli/bin/leeway.js', import.meta.url));
  const data = folder ?? mkdtempSync(join(tmpdir(), 'leeway-e2e-'));
  const server = spawn(process.execPath, [leeway, 'serve', '--port', '0', '--data', data, ...options], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface({ input: server.stdout })) {
    const address = /http:\S+/.exec(line)?.[0];
    if (address === undefined) continue;
    return {
      address,
      stop: async () => {
        const ended = once(server, 'exit');
        server.kill('SIGTERM');
        // asked twice it does not wait for what is being worked out
        const again = setTimeout(() => server.kill('SIGTERM'), PATIENCE_MS);
        await ended;
        clearTimeout(again);
        if (folder === undefined) rmSync(data, { recursive: true, force: true });
      },
    };
  }
  throw new Error('leeway serve ended without saying where it is');
}
