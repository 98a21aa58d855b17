import { sent } from '../shell/api.ts';
import { Outbox, type Shelf } from './outbox.ts';

const AGAIN_MS = 4000;

/** A browser that keeps nothing at all. */
const NO_SHELF: Shelf = {
  length: 0,
  key: () => null,
  getItem: () => null,
  removeItem: () => undefined,
  setItem: () => {
    throw new Error('nothing is kept');
  },
};

function shelf(): Shelf {
  try {
    return localStorage;
  } catch {
    return NO_SHELF;
  }
}

/** What this browser has yet to bring to the server; it tries again by itself, and at once when the connection is back. */
export const unsent = new Outbox(shelf(), (path, records) => sent(path, { records }));

addEventListener('online', () => void unsent.flush());
setInterval(() => {
  if (unsent.waiting.peek() > 0) void unsent.flush();
}, AGAIN_MS);
