import { expect, test } from 'vitest';
import { Asker } from '../asker.ts';
import type { Port } from '../port.ts';
import type { Trial } from './trial.ts';

/** The laws of the protocol, to be run over each kind of port: `open` gives a port to a fresh trial desk. */
export function keepsProtocol(open: () => Port): void {
  const asked = async (use: (desk: Asker<Trial>) => Promise<void>): Promise<void> => {
    const desk = new Asker<Trial>(open());
    try {
      await use(desk);
    } finally {
      desk.close();
    }
  };

  test('a question is answered', () =>
    asked(async (desk) => {
      expect(await desk.ask('double', { n: 21 })).toBe(42);
    }));

  test('questions of different names are all answered, in the order they were asked', () =>
    asked(async (desk) => {
      const order: string[] = [];
      await Promise.all([
        desk.ask('work', { pauses: 5 }).then(() => order.push('work')),
        desk.ask('double', { n: 1 }).then(() => order.push('double')),
        desk.ask('block', { ms: 1 }).then(() => order.push('block')),
      ]);
      expect(order).toEqual(['work', 'double', 'block']);
    }));

  test('of questions that wait, only the newest of a name is begun', () =>
    asked(async (desk) => {
      const busy = desk.ask('block', { ms: 30 });
      const answers = [1, 2, 3, 4].map((n) => desk.ask('double', { n }));
      expect(await Promise.all(answers)).toEqual([undefined, undefined, undefined, 8]);
      expect(await busy).toBe('done');
      expect(await desk.ask('begun', {})).toEqual([4]);
    }));

  test('an urgent question overtakes those that wait, twice and not again', () =>
    asked(async (desk) => {
      const order: string[] = [];
      const noted = async (name: string, answer: Promise<unknown>): Promise<void> => {
        await answer;
        order.push(name);
      };
      const urgent = (n: number) => noted(`urgent ${n}`, desk.ask('urgent', { n, ms: 150 }));
      const begun = () => new Promise((resolve) => void setTimeout(resolve, 50));
      await desk.ask('double', { n: 0 });
      const first = urgent(0);
      await begun();
      const waits = noted('double', desk.ask('double', { n: 1 }));
      const second = urgent(1);
      await first;
      await begun();
      const third = urgent(2);
      await second;
      await begun();
      await Promise.all([third, urgent(3), waits]);
      expect(order).toEqual(['urgent 0', 'urgent 1', 'urgent 2', 'double', 'urgent 3']);
    }));

  test('long work is left at its next pause when a newer question comes', () =>
    asked(async (desk) => {
      await desk.ask('double', { n: 1 });
      const old = desk.ask('work', { pauses: 1e9 });
      await new Promise((resolve) => void setTimeout(resolve, 30));
      expect(await desk.ask('work', { pauses: 1 })).toBe(3);
      expect(await old).toBeUndefined();
    }));

  test('a question that is withdrawn answers undefined at once, and leaves the desk free', () =>
    asked(async (desk) => {
      const control = new AbortController();
      const endless = desk.ask('work', { pauses: 1e9 }, control.signal);
      control.abort();
      expect(await endless).toBeUndefined();
      expect(await desk.ask('double', { n: 3 }, control.signal)).toBeUndefined();
      expect(await desk.ask('double', { n: 4 })).toBe(8);
      expect(await desk.ask('begun', {})).toEqual([4]);
    }));

  test('a failure keeps its name and message, and the desk goes on', () =>
    asked(async (desk) => {
      await expect(desk.ask('fail', { message: 'no such hole' })).rejects.toMatchObject({
        name: 'RangeError',
        message: 'no such hole',
      });
      await expect(desk.ask('unsendable', {})).rejects.toMatchObject({ name: 'DataCloneError' });
      expect(await desk.ask('double', { n: 5 })).toBe(10);
    }));

  test('what is moved arrives whole', () =>
    asked(async (desk) => {
      const bytes = await desk.ask('bytes', { length: 1000 });
      expect(bytes && new Uint8Array(bytes).every((b) => b === 7)).toBe(true);
      expect(bytes?.byteLength).toBe(1000);
    }));

  test('a question that the desk does not know fails', () =>
    asked(async (desk) => {
      for (const name of ['nothing', 'constructor'] as unknown as 'double'[])
        await expect(desk.ask(name, { n: 1 })).rejects.toThrow(`answers no "${name}"`);
    }));

  test('closing answers what is open by undefined, and nothing can be asked after it', async () => {
    const desk = new Asker<Trial>(open());
    const endless = desk.ask('work', { pauses: 1e9 });
    desk.close();
    expect(await endless).toBeUndefined();
    await expect(desk.ask('double', { n: 1 })).rejects.toThrow('closed');
  });
}
