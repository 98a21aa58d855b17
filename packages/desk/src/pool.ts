import { Asker } from './asker.ts';
import type { Port } from './port.ts';
import type { About, Answer, Name, Questions } from './questions.ts';

/** A few desks of one kind for many questions: each desk has one question at a time, so that none takes another's place. */
export class Pool<D extends Questions<D>> {
  private readonly askers: readonly Asker<D>[];
  private readonly free: Asker<D>[];
  private readonly waiting: ((asker: Asker<D>) => void)[] = [];

  /** Opens as many desks as there are ports. */
  constructor(ports: readonly Port[]) {
    if (ports.length === 0) throw new RangeError('a pool needs a port');
    this.askers = ports.map((port) => new Asker<D>(port));
    this.free = [...this.askers];
  }

  /** As `Asker.ask`, by the first desk that is free; questions wait in the order they were asked. */
  async ask<N extends Name<D>>(name: N, about: About<D, N>, signal?: AbortSignal): Promise<Answer<D, N> | undefined> {
    const asker = this.free.pop() ?? (await new Promise<Asker<D>>((resolve) => this.waiting.push(resolve)));
    try {
      return await asker.ask(name, about, signal);
    } finally {
      const next = this.waiting.shift();
      if (next === undefined) this.free.push(asker);
      else next(asker);
    }
  }

  close(): void {
    for (const asker of this.askers) asker.close();
  }
}
