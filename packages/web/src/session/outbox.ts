import { signal } from '@preact/signals';
import { Refused } from '../shell/api.ts';

/** A record that the server is to keep, and the address it goes to. */
interface Unsent {
  readonly path: string;
  readonly record: object;
}

/** What is used of `localStorage`. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const KEY = 'leeway-unsent ';
const AT_ONCE = 200;

/**
 * Records on their way to the server. Each is written down in the browser before it is sent and struck out when the server has answered, so that neither a lost
 * connection nor a closed page loses one; ids are made here, so that sending one twice is harmless. They go in the order in which they were added.
 */
export class Outbox {
  /** How many the server has not answered for. */
  readonly waiting = signal(0);
  /** Why the server will not have the next of them. */
  readonly refused = signal<string | undefined>(undefined);
  /** Whether the browser writes things down; if not, they are held only while the page is open. */
  readonly written = signal(true);
  private readonly shelf: Shelf;
  private readonly send: (path: string, records: readonly object[]) => Promise<unknown>;
  private readonly held = new Map<string, Unsent>();
  private count = 0;
  private sending: Promise<boolean> | undefined;

  constructor(shelf: Shelf, send: (path: string, records: readonly object[]) => Promise<unknown>) {
    this.shelf = shelf;
    this.send = send;
    this.waiting.value = this.keys().length;
  }

  add(path: string, record: object): void {
    const key = `${KEY}${String(Date.now()).padStart(15, '0')} ${String(++this.count).padStart(6, '0')}`;
    const unsent: Unsent = { path, record };
    try {
      this.shelf.setItem(key, JSON.stringify(unsent));
    } catch {
      this.held.set(key, unsent);
      this.written.value = false;
    }
    this.waiting.value = this.keys().length;
  }

  /** Sends what waits. True when the server has everything. */
  flush(): Promise<boolean> {
    this.sending ??= this.sendAll().finally(() => (this.sending = undefined));
    return this.sending;
  }

  private async sendAll(): Promise<boolean> {
    for (let next = this.next(); next !== undefined; next = this.next()) {
      try {
        // one after the other is the order that they were made in
        // oxlint-disable-next-line no-await-in-loop
        await this.send(next.path, next.records);
      } catch (error) {
        if (error instanceof Refused && error.status < 500) this.refused.value = error.message;
        return false;
      }
      for (const key of next.keys) {
        this.held.delete(key);
        this.shelf.removeItem(key);
      }
      this.refused.value = undefined;
      this.waiting.value = this.keys().length;
    }
    return true;
  }

  /** The oldest that wait, as far as they go to one address. */
  private next(): { readonly path: string; readonly keys: string[]; readonly records: object[] } | undefined {
    let found: { readonly path: string; readonly keys: string[]; readonly records: object[] } | undefined;
    for (const key of this.keys()) {
      const unsent = this.held.get(key) ?? read(this.shelf.getItem(key));
      if (unsent === undefined) continue;
      found ??= { path: unsent.path, keys: [], records: [] };
      if (found.path !== unsent.path || found.keys.length === AT_ONCE) break;
      found.keys.push(key);
      found.records.push(unsent.record);
    }
    return found;
  }

  private keys(): readonly string[] {
    const keys = [...this.held.keys()];
    for (let i = 0; i < this.shelf.length; i++) {
      const key = this.shelf.key(i);
      if (key?.startsWith(KEY) === true) keys.push(key);
    }
    return keys.toSorted();
  }
}

function read(text: string | null): Unsent | undefined {
  try {
    return text === null ? undefined : (JSON.parse(text) as Unsent);
  } catch {
    return undefined;
  }
}
