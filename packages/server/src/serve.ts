import { createServer } from 'node:net';
import { createApp, type Served } from './app.ts';

/** This machine alone. */
const HOST = '127.0.0.1';

/** A server that listens. */
export interface Serving {
  /** e.g. `http://127.0.0.1:4310/`. */
  readonly address: string;
  close(): Promise<void>;
}

/** Rejects with the system's error when the port cannot be had, so that this is known before long work begins. */
export async function tryPort(port: number): Promise<void> {
  const probe = createServer();
  await new Promise<void>((resolve, reject) => {
    probe.once('error', reject);
    probe.listen({ host: HOST, port }, resolve);
  });
  await new Promise((resolve) => probe.close(resolve));
}

/**
 * Serves the app on the loopback interface; port 0 takes any free one. Rejects with the system's error when it cannot listen; what goes wrong
 * later is put to `told`.
 */
export async function serve(port: number, served: Served, told: (error: unknown) => void): Promise<Serving> {
  let closing = false;
  const app = await createApp(served, (error) => (closing ? undefined : told(error)));
  const address = await app.listen({ host: HOST, port });
  return {
    address: `${address}/`,
    close: async () => {
      closing = true;
      await app.close();
    },
  };
}
