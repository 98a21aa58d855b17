import type { Random } from '@leeway/engine';

/** How made-up players' balls come about, where that is not as the model has it. */
export interface World {
  readonly name: string;
  /** A mishit's carry as a share of the good strike's. */
  readonly mishitCarry: (random: Random, full: boolean) => number;
  /** A good strike's carry in standard deviations from its mean. */
  readonly goodCarry: (random: Random) => number;
  /** A ball's direction in standard deviations from its mean. */
  readonly start: (random: Random) => number;
  /** A mishit's direction is this much wider than a good strike's. */
  readonly mishitDirection: number;
  /** How much all clubs of a player together differ from their level, and each club by itself: logarithm of spreads, logit of mishits. */
  readonly spreads: { readonly all: number; readonly own: number };
  readonly mishits: { readonly all: number; readonly own: number };
  /** Share of the carry that a swing gains or loses from its first ball to its last. */
  readonly drift: number;
  /** Share of the balls that are of another make, and how far they go of the player's own. */
  readonly otherBalls?: { readonly share: number; readonly goes: number };
}

const usualMishit = (random: Random, full: boolean): number => {
  if (random.next() < 0.92) return random.beta(3.2, 2);
  return full ? 1.275 + 0.03 * random.normal() : 1.25 + 0.3 * random.next();
};

/** As the model has it, near enough. */
export const USUAL: World = {
  name: 'usual',
  mishitCarry: usualMishit,
  goodCarry: (random) => random.normal(),
  start: (random) => random.normal(),
  mishitDirection: 1.6,
  spreads: { all: 0.2, own: 0.15 },
  mishits: { all: 0.4, own: 0.3 },
  drift: 0,
};

/** A split normal of mean 0 and standard deviation 1, its short side 1.35 times as wide as its long one. */
function shortTailed(random: Random): number {
  const [short, long] = [1.15, 0.85];
  const mean = Math.sqrt(2 / Math.PI) * (long - short);
  const sd = Math.sqrt((1 - 2 / Math.PI) * (long - short) ** 2 + short * long);
  const z = Math.abs(random.normal());
  const x = random.next() < short / (short + long) ? -short * z : long * z;
  return (x - mean) / sd;
}

/** Truths that the model does not have. */
export const STRAYS: readonly World[] = [
  { ...USUAL, name: 'mishits nearer the good strike', mishitCarry: (random) => random.beta(7, 2.5) },
  {
    ...USUAL,
    name: 'mishits of any carry, twice as wild',
    mishitCarry: (random) => 0.1 + 1.1 * random.next(),
    mishitDirection: 2.4,
  },
  { ...USUAL, name: 'good strikes with a short tail', goodCarry: shortTailed },
  {
    ...USUAL,
    name: 'good strikes with heavy tails',
    goodCarry: (random) => random.normal() * Math.sqrt(1.5 / random.gamma(2.5)),
  },
  {
    ...USUAL,
    name: 'directions with heavy tails',
    start: (random) => random.normal() * Math.sqrt(3 / random.gamma(4)),
  },
  { ...USUAL, name: 'every club its own spread', spreads: { all: 0, own: 0.35 }, mishits: { all: 0, own: 0.7 } },
  { ...USUAL, name: 'a swing that loses 4 % over its balls', drift: -0.04 },
  { ...USUAL, name: 'a third of the balls go 4 % less', otherBalls: { share: 1 / 3, goes: 0.96 } },
];
