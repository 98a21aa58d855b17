import type { Call, Reply } from './messages.ts';
import type { Port } from './port.ts';
import type { About, Answer, Name, Questions } from './questions.ts';

interface Open {
  readonly settle: (value: unknown) => void;
  readonly fail: (why: Error) => void;
}

/** Asks a desk at the other end of a port. */
export class Asker<D extends Questions<D>> {
  private readonly port: Port;
  private readonly open = new Map<number, Open>();
  private asked = 0;
  private gone: Error | undefined;

  constructor(port: Port) {
    this.port = port;
    port.receive((message) => this.take(message as Reply));
    port.ended((why) => this.end(why));
  }

  /**
   * The answer to a question; `undefined` when a newer question of the same name took its place, `signal` withdrew it, or the asker was closed.
   * Rejects with the name and message of what went wrong at the desk.
   */
  ask<N extends Name<D>>(name: N, about: About<D, N>, signal?: AbortSignal): Promise<Answer<D, N> | undefined> {
    if (this.gone !== undefined) return Promise.reject(this.gone);
    if (signal?.aborted === true) return Promise.resolve(undefined);
    const id = ++this.asked;
    const { promise, resolve, reject } = Promise.withResolvers<unknown>();
    const withdraw = (): void => {
      if (this.open.delete(id)) this.call({ call: 'withdraw', id });
      resolve(undefined);
    };
    signal?.addEventListener('abort', withdraw, { once: true });
    const done = (): void => signal?.removeEventListener('abort', withdraw);
    this.open.set(id, {
      settle: (value) => (done(), resolve(value)),
      fail: (why) => (done(), reject(why)),
    });
    this.call({ call: 'ask', id, name, about });
    return promise as Promise<Answer<D, N> | undefined>;
  }

  /** Closes the line; questions still open are answered by `undefined`. */
  close(): void {
    for (const { settle } of this.open.values()) settle(undefined);
    this.open.clear();
    this.gone ??= new Error('the line to the desk is closed');
    this.port.close();
  }

  private call(call: Call): void {
    this.port.send(call);
  }

  private take(reply: Reply): void {
    const open = this.open.get(reply.id);
    if (open === undefined) return;
    this.open.delete(reply.id);
    if (reply.reply === 'failure') {
      const why = new Error(reply.failure.message);
      why.name = reply.failure.name;
      open.fail(why);
    } else open.settle(reply.reply === 'answer' ? reply.value : undefined);
  }

  private end(why: Error): void {
    this.gone ??= why;
    for (const { fail } of this.open.values()) fail(why);
    this.open.clear();
  }
}
