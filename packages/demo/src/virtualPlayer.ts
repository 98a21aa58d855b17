import { RAD_PER_DEG, type Random } from '@leeway/engine';

/** How a made-up player truly hits one club and swing on the range. Distances are carries, ball to pitch. */
export interface TrueSwing {
  readonly club: string;
  readonly swing: string;
  /** Carry of the good strike. */
  readonly carryM: number;
  readonly sdCarryM: number;
  /** Start to the right of the aim line; left is negative. */
  readonly directionDeg: number;
  readonly sdDirectionDeg: number;
  readonly mishitShare: number;
}

/** One ball: where it pitched, and whether it was a mishit, which no shot file tells. */
export interface Ball {
  readonly carryM: number;
  readonly sideM: number;
  readonly mishit: boolean;
}

/** A mishit's carry is this share of the good strike's, beta-distributed (mean 0.615, sd 0.195); a few are thin and run on long. */
const MISHIT_BETA = [3.2, 2] as const;
const THIN_SHARE = 0.08;
const THIN_LONG = [1.05, 1.3] as const;
const MISHIT_DIRECTION = 1.6;

/** One ball of a swing. */
export function hit(swing: TrueSwing, random: Random): Ball {
  const mishit = random.next() < swing.mishitShare;
  const directionDeg = swing.directionDeg + swing.sdDirectionDeg * (mishit ? MISHIT_DIRECTION : 1) * random.normal();
  const carryM = mishit ? swing.carryM * mishitCarry(random) : swing.carryM + swing.sdCarryM * random.normal();
  return { carryM, sideM: carryM * Math.sin(directionDeg * RAD_PER_DEG), mishit };
}

function mishitCarry(random: Random): number {
  if (random.next() >= THIN_SHARE) return random.beta(...MISHIT_BETA);
  const [from, to] = THIN_LONG;
  return from + (to - from) * random.next();
}
