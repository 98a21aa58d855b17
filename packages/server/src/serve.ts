import { createApp, type Served } from './app.ts';

/** A server that listens. */
export interface Serving {
  /** e.g. `http://127.0.0.1:4310/`. */
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Serves the app on the loopback interface; port 0 takes any free one. Rejects with the system's error when it cannot listen; what goes wrong
 * later is put to `told`.
 */
export async function serve(port: number, served: Served, told: (error: unknown) => void): Promise<Serving> {
  let closing = false;
  const app = createApp(served, (error) => (closing ? undefined : told(error)));
  const address = await app.listen({ host: '127.0.0.1', port });
  return {
    address: `${address}/`,
    close: async () => {
      closing = true;
      await app.close();
    },
  };
}
