import { Worker } from 'node:worker_threads';
import { type PlanDocument, planSchema } from '@leeway/contract';
import { createApp } from './app.ts';

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
export async function serve(port: number, told: (error: unknown) => void): Promise<Serving> {
  const planner = solveDemo();
  let closing = false;
  const app = createApp(
    () => planner.plan,
    (error) => (closing ? undefined : told(error)),
  );
  try {
    const address = await app.listen({ host: '127.0.0.1', port });
    return {
      address: `${address}/`,
      close: async () => {
        closing = true;
        await planner.stop();
        await app.close();
      },
    };
  } catch (error) {
    await planner.stop();
    throw error;
  }
}

/** Begins to solve the demo in a thread of its own. */
function solveDemo(): { readonly plan: Promise<PlanDocument>; stop(): Promise<void> } {
  const worker = new Worker(new URL('./demoPlanner.ts', import.meta.url));
  const plan = new Promise<unknown>((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the planner stopped')));
  }).then((message) => planSchema.parse(message));
  plan.catch(() => undefined);
  return {
    plan,
    stop: async () => {
      await worker.terminate();
    },
  };
}
