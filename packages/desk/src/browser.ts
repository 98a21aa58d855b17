import type { Port } from './port.ts';

/** What the two ends of a browser's worker have in common; named by shape, so that this package needs no browser's types. */
interface Line {
  postMessage(message: unknown, moved?: never): void;
  addEventListener(type: string, listener: (event: unknown) => void): void;
}

/** The asker's end of a browser's worker. */
export const workerPort = (worker: Line & { terminate(): void }): Port => portOf(worker, () => worker.terminate());

/** The desk's end: the worker's own global scope. */
export const scopePort = (scope: Line & { close(): void }): Port => portOf(scope, () => scope.close());

const portOf = (line: Line, close: () => void): Port => ({
  send: (message, moved = []) => line.postMessage(message, moved as never),
  receive: (take) => line.addEventListener('message', (event) => take((event as { readonly data: unknown }).data)),
  ended: (tell) => {
    line.addEventListener('error', (event) => {
      const { message } = event as { readonly message?: string };
      tell(new Error(message === undefined || message === '' ? 'the worker could not be started' : message));
    });
    line.addEventListener('messageerror', () => tell(new Error('a message could not be read')));
  },
  close,
});
