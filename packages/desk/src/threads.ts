import { parentPort, type Transferable, type Worker } from 'node:worker_threads';
import type { Port } from './port.ts';

/** The asker's end of a worker thread. */
export const threadPort = (worker: Worker): Port => ({
  send: (message, moved = []) => worker.postMessage(message, moved as readonly Transferable[]),
  receive: (take) => worker.on('message', take),
  ended: (tell) => {
    worker.on('error', (thrown) => tell(thrown instanceof Error ? thrown : new Error(String(thrown))));
    worker.on('exit', () => tell(new Error('the thread has stopped')));
  },
  close: () => void worker.terminate(),
});

/** The desk's end: the port of the thread that this runs in. Throws on the main thread. */
export function ownThreadPort(): Port {
  const port = parentPort;
  if (port === null) throw new Error('this is no worker thread');
  return {
    send: (message, moved = []) => port.postMessage(message, moved as readonly Transferable[]),
    receive: (take) => port.on('message', take),
    ended: (tell) => port.on('close', () => tell(new Error('the other end has closed'))),
    close: () => port.close(),
  };
}
