import { randomFrom, YARD_M } from '@leeway/engine';
import { hit, type TrueSwing } from './virtualPlayer.ts';

/** Balls of each swing in turn, hit by a virtual player from a seed: `club,swing,carry (yd),side (yd)`, right of the line positive. */
export function shotsFile(swings: readonly (TrueSwing & { readonly balls: number })[], seed: number): string {
  const random = randomFrom(seed);
  const rows = swings.flatMap((swing) =>
    Array.from({ length: swing.balls }, () => {
      const { carryM, sideM } = hit(swing, random);
      return `${swing.club},${swing.swing},${yards(carryM)},${yards(sideM)}`;
    }),
  );
  return `club,swing,carry (yd),side (yd)\n${rows.join('\n')}\n`;
}

const yards = (m: number): string => (m / YARD_M).toFixed(1);
