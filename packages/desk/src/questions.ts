/** What a desk answers: a method a kind of question, as it looks to the asker. `undefined`: the question was passed over. */
export type Questions<D> = { readonly [N in keyof D]: (about: never) => Promise<unknown> };

export type Name<D> = keyof D & string;
export type About<D, N extends keyof D> = D[N] extends (about: infer Q) => Promise<unknown> ? Q : never;
export type Answer<D, N extends keyof D> = D[N] extends (about: never) => Promise<infer A>
  ? Exclude<A, undefined>
  : never;
