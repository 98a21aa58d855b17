import { createServer } from 'node:net';
import { createApp, type Served } from './app.ts';
import { bindingFaults, LOOPBACK } from './binding.ts';

/** A server that listens. */
export interface Serving {
  /** e.g. `http://127.0.0.1:4310/`. */
  readonly address: string;
  close(): Promise<void>;
}

/** Rejects with the system's error when the port cannot be had, so that this is known before long work begins. */
export async function tryPort(port: number, host = LOOPBACK): Promise<void> {
  const probe = createServer();
  await new Promise<void>((resolve, reject) => {
    probe.once('error', reject);
    probe.listen({ host, port }, resolve);
  });
  await new Promise((resolve) => probe.close(resolve));
}

/**
 * Serves the app, on the loopback interface unless an address is said; port 0 takes any free one. Rejects with the system's error when it cannot
 * listen, and for an address whose door is not fit for it; what goes wrong later is put to `told`.
 */
export async function serve(
  port: number,
  served: Served,
  told: (error: unknown) => void,
  host = LOOPBACK,
): Promise<Serving> {
  const [unfit] = bindingFaults(host, served.door ?? {}, served.tls !== undefined);
  if (unfit !== undefined) throw new Error(`${host} cannot be served on: ${unfit.found}; expected ${unfit.expected}`);
  let closing = false;
  const app = await createApp(served, (error) => (closing ? undefined : told(error)));
  const address = await app.listen({ host, port });
  return {
    address: `${address}/`,
    close: async () => {
      closing = true;
      await app.close();
    },
  };
}
