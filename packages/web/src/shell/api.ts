import type { Fault } from '@leeway/contract';

/** A request that the server refused, with its reasons; the message is the first of them in words. */
export class Refused extends Error {
  readonly status: number;
  readonly faults: readonly Fault[];
  constructor(status: number, faults: readonly Fault[]) {
    const [first] = faults;
    super(
      first === undefined ? `status ${status}` : `${placeOf(first)}found ${first.found}, expected ${first.expected}`,
    );
    this.status = status;
    this.faults = faults;
  }
}

const placeOf = ({ line, at }: Fault): string =>
  line === undefined ? (at === undefined ? '' : `${at}: `) : `line ${line}: `;

const OWN = { 'x-leeway': '1' };

/** What the server answers at an address. Rejects with `Refused`, or with what the browser says when there is no answer. */
export const got = <T>(url: string): Promise<T> => answer<T>(fetch(url));

/** Sends JSON, or the bytes of a file as they are. */
export const sent = <T>(url: string, body: object | Blob): Promise<T> =>
  answer<T>(
    fetch(url, {
      method: 'POST',
      headers: { ...OWN, 'content-type': body instanceof Blob ? 'application/octet-stream' : 'application/json' },
      body: body instanceof Blob ? body : JSON.stringify(body),
    }),
  );

async function answer<T>(asked: Promise<Response>): Promise<T> {
  const response = await asked;
  const json = (await response.json().catch(() => ({}))) as T & { readonly faults?: readonly Fault[] };
  if (!response.ok) throw new Refused(response.status, json.faults ?? []);
  return json;
}

/** A record of a kind, made here and now. */
export const newRecord = <B extends object>(body: B, supersedes?: string) => ({
  id: crypto.randomUUID(),
  madeAt: new Date().toISOString(),
  ...(supersedes === undefined ? {} : { supersedes }),
  body,
});

/** Today where the coach is, as dates are kept. */
export function today(now = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
