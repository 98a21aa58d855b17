/** What goes from an asker to a desk. */
export type Call =
  | { readonly call: 'ask'; readonly id: number; readonly name: string; readonly about: unknown }
  | { readonly call: 'withdraw'; readonly id: number };

/** What comes back, once for each question. A failure crosses as a value, since errors of a class do not. */
export type Reply =
  | { readonly reply: 'answer'; readonly id: number; readonly value: unknown }
  | { readonly reply: 'passed over'; readonly id: number }
  | { readonly reply: 'failure'; readonly id: number; readonly failure: Failure };

export interface Failure {
  readonly name: string;
  readonly message: string;
}

export const failureOf = (thrown: unknown): Failure =>
  thrown instanceof Error
    ? { name: thrown.name, message: thrown.message }
    : { name: 'Error', message: typeof thrown === 'string' ? thrown : 'something went wrong' };
