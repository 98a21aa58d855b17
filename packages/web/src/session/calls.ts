import type { Call } from '@leeway/engine';

/** A club and how it is swung. */
export interface Option {
  readonly club: string;
  readonly swing: string;
}

export const sameOption = (a: Option, b: Option): boolean => a.club === b.club && a.swing === b.swing;

/** What is called next: in a block of so many, or by lot. */
export interface Called extends Option {
  /** Which ball of its block, from 1, and of how many; nothing when it is called by lot. */
  readonly inBlock?: { readonly ball: number; readonly of: number };
}

/**
 * The first call of an order that no ball answers yet. Balls answer calls of their club in order, whatever was called when they were hit, so that a ball undone is called
 * again. Clubs that are known well enough are called no more. `undefined` at the end of the order.
 */
export function nextCall(
  order: readonly Call[],
  hit: readonly Option[],
  enough: (o: Option) => boolean,
): Called | undefined {
  const unused = [...hit];
  for (const { club, swing, balls } of order) {
    for (let ball = 1; ball <= balls; ball++) {
      const at = unused.findIndex((o) => sameOption(o, { club, swing }));
      if (at >= 0) unused.splice(at, 1);
      else if (!enough({ club, swing })) return { club, swing, ...(balls > 1 ? { inBlock: { ball, of: balls } } : {}) };
    }
  }
  return undefined;
}

/** A number of a session's own, for its lots. */
export const seedOf = (id: string): number => Number.parseInt(id.slice(0, 8), 16) >>> 0;
