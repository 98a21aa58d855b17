import type { Answerers } from '../desk.ts';

/** A desk to try the protocol on. */
export interface Trial {
  /** Twice a number. */
  double(about: { readonly n: number }): Promise<number | undefined>;
  /** Works for so many pauses, and says how many questions of any kind were begun before it was done. */
  work(about: { readonly pauses: number }): Promise<number | undefined>;
  /** As `double`, before other questions that wait, and after so many milliseconds. */
  urgent(about: { readonly n: number; readonly ms: number }): Promise<number | undefined>;
  /** Works for so many milliseconds without letting anything in. */
  block(about: { readonly ms: number }): Promise<string | undefined>;
  /** Fails, with a name and a message. */
  fail(about: { readonly message: string }): Promise<never>;
  /** So many bytes, moved. */
  bytes(about: { readonly length: number }): Promise<ArrayBuffer | undefined>;
  /** Gives something that cannot be sent. */
  unsendable(about: object): Promise<object | undefined>;
  /** Which of the questions "double" were begun. */
  begun(about: object): Promise<readonly number[] | undefined>;
}

export function trial(): Answerers<Trial> {
  const doubled: number[] = [];
  let begun = 0;
  return {
    double: ({ n }) => {
      begun++;
      doubled.push(n);
      return 2 * n;
    },
    urgent: async ({ n, ms }) => {
      await new Promise((resolve) => void setTimeout(resolve, ms));
      return 2 * n;
    },
    work: async ({ pauses }, turn) => {
      begun++;
      for (let i = 0; i < pauses; i++) await turn.pause();
      return begun;
    },
    block: ({ ms }) => {
      const end = performance.now() + ms;
      while (performance.now() < end);
      return 'done';
    },
    fail: ({ message }) => {
      throw new RangeError(message);
    },
    bytes: ({ length }, turn) => {
      const { buffer } = new Uint8Array(length).fill(7);
      turn.move(buffer);
      return buffer;
    },
    unsendable: () => ({ call: () => undefined }),
    begun: () => doubled,
  };
}
