import type { Fault } from '@leeway/contract';

/** A request that is not done, with its faults. Thrown inside a route; the answer is made in one place. */
export class Refusal extends Error {
  readonly statusCode: number;
  readonly faults: readonly Fault[];
  constructor(faults: readonly Fault[], statusCode = statusOf(faults)) {
    super(faults[0]?.found ?? 'refused');
    this.faults = faults;
    this.statusCode = statusCode;
  }
}

/** One reason. */
export const refusal = (statusCode: number, code: string, file: string, found: string, expected: string): Refusal =>
  new Refusal([{ code, level: 'refused', file, found, expected }], statusCode);

export const notThere = (what: string): Refusal =>
  refusal(404, 'not-there', what, `no ${what} of this id`, 'one that is stored');

/** Other than 400, by the code of the first fault that refuses. */
const STATUS: { readonly [code: string]: number } = {
  taken: 409,
  frozen: 409,
  erased: 410,
  'too-large': 413,
  'disk-full': 507,
};

const statusOf = (faults: readonly Fault[]): number =>
  STATUS[faults.find((fault) => fault.level === 'refused')?.code ?? ''] ?? 400;
