import { type FlightTag, launchFamily, type LaunchFamily, type LaunchShift, TAG_SHIFT } from './family.ts';

/** What a carry leaves open of the launch: degrees and share of spin to either side. */
const OPEN_FROM_CARRY: LaunchShift = { launchDeg: 3, spin: 0.25 };
/** What a tag leaves open besides: about a third (our assumption). */
const OPEN_FROM_TAG: LaunchShift = { launchDeg: 1, spin: 0.08 };

/**
 * The families that a player may have who told a loft and perhaps how high the ball flies: the central one first, then launch and spin
 * moved both ways, nine in all. What differs between them is what nobody knows without a measured launch.
 */
export function familiesOf(loftDeg: number, tag?: FlightTag): readonly LaunchFamily[] {
  const open = tag === undefined ? OPEN_FROM_CARRY : OPEN_FROM_TAG;
  const base = TAG_SHIFT[tag ?? 'normal'];
  return [0, -1, 1].flatMap((up) =>
    [0, -1, 1].map((more) =>
      launchFamily(loftDeg, {
        launchDeg: base.launchDeg + up * open.launchDeg,
        spin: base.spin * (1 + more * open.spin),
      }),
    ),
  );
}

/** A figure with its doubt: 80 in 100. */
export interface Doubted {
  readonly mean: number;
  readonly lo80: number;
  readonly hi80: number;
}

/** The 90 % point of the standard normal. */
const Z80 = 1.2815515655446004;

/** A central figure and the same figure for every variant, itself among them: their standard deviation is its doubt. */
export function doubted(central: number, variants: readonly number[], alsoSd = 0): Doubted {
  const mean = variants.reduce((sum, v) => sum + v, 0) / variants.length;
  const varianceM2 = variants.reduce((sum, v) => sum + (v - mean) ** 2, 0) / variants.length;
  const reach = Z80 * Math.hypot(Math.sqrt(varianceM2), alsoSd);
  return { mean: central, lo80: central - reach, hi80: central + reach };
}
