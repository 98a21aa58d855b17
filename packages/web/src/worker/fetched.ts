import { type Read, wordFault } from '@leeway/contract';

/** Where the worker's files come from: the text at an address. */
export type Fetch = (url: string) => Promise<string>;

/** By the browser. */
export const fetchText: Fetch = async (url) => {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the file at ${url} was not sent: status ${response.status}`);
  return response.text();
};

/** The value of a file that was read; throws its refusals, a line each. */
export function valueOf<T>({ value, faults }: Read<T>): T {
  if (value !== undefined) return value;
  throw new Error(
    faults
      .filter((f) => f.level === 'refused')
      .map(wordFault)
      .join('\n'),
  );
}
