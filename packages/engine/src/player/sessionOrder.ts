import { ballPrecision } from './ballsUntil.ts';
import { type Asked, enough, gain, type KnownSoFar, nameOf } from './enough.ts';

/** A block of balls of one club, or a single call. */
export interface Call {
  readonly club: string;
  readonly swing: string;
  readonly balls: number;
}

const BLOCK = 5;
/** This share of a session is hit in blocks, to find the swing; the rest is called at random, as a course calls it. */
const IN_BLOCKS = 0.6;

/**
 * A session of at most `left` balls on the carries that need them: fives where they save most, each on what those before it left unknown; hit in blocks first, shortest club
 * first, then one at a time in an order drawn by `random`, no club twice running where there is another.
 */
export function sessionOrder(
  entries: readonly KnownSoFar[],
  asked: Asked,
  random: { next: () => number },
): readonly Call[] {
  const state = [...entries];
  const given = new Map<number, number>();
  let { left } = enough(state, asked);
  while (left >= BLOCK) {
    const { carries } = enough(state, asked);
    const gains = state.map((e, i) => (carries[i]!.more > 0 ? gain(e, BLOCK, asked.onCourse).strokesARound : 0));
    const best = gains.indexOf(Math.max(...gains));
    if (!(gains[best]! > 0)) break;
    const e = state[best]!;
    const precision = 1 / e.carryM.se ** 2 + BLOCK * ballPrecision(e.sdAlongM.mean, e.mishitShare.mean);
    state[best] = { ...e, carryM: { ...e.carryM, se: 1 / Math.sqrt(precision) } };
    given.set(best, (given.get(best) ?? 0) + BLOCK);
    left -= BLOCK;
  }
  const chosen = [...given].map(([i, balls]) => ({
    e: entries[i]!,
    blocked: BLOCK * Math.ceil((IN_BLOCKS * balls) / BLOCK),
    balls,
  }));
  const blocks = chosen
    .toSorted((a, b) => a.e.carryM.mean - b.e.carryM.mean)
    .map(({ e, blocked }): Call => ({ ...nameOf(e), balls: blocked }));
  const rest = chosen.flatMap(({ e, balls, blocked }) => Array.from({ length: balls - blocked }, () => nameOf(e)));
  return [...blocks, ...mixed(rest, random).map((c): Call => ({ ...c, balls: 1 }))];
}

/** Drawn without replacement, another club than the last wherever one is left. */
function mixed<T extends { club: string; swing: string }>(
  calls: readonly T[],
  random: { next: () => number },
): readonly T[] {
  const left = [...calls];
  const order: T[] = [];
  while (left.length > 0) {
    const last = order.at(-1);
    const others = left.flatMap((c, i) =>
      last !== undefined && c.club === last.club && c.swing === last.swing ? [] : [i],
    );
    const from = others.length > 0 ? others : left.map((_, i) => i);
    const at = from[Math.min(from.length - 1, Math.floor(random.next() * from.length))]!;
    order.push(...left.splice(at, 1));
  }
  return order;
}
