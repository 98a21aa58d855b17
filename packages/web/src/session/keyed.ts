import type { Units } from '@leeway/engine';
import { readCarryM } from '../carries/claims.ts';

/** What has been keyed of a ball. */
export interface Keyed {
  readonly carry: string;
  /** Nothing when the side was not seen. */
  readonly side: string;
  readonly hand: 'left' | 'right';
}

export const NOTHING_KEYED: Keyed = { carry: '', side: '', hand: 'right' };
const MOST_FIGURES = 3;

/** With one more figure; a fourth is not taken. */
export const withFigure = (text: string, figure: string): string =>
  text.length < MOST_FIGURES ? `${text === '0' ? '' : text}${figure}` : text;

export const figuresOf = (text: string): string => text.replace(/\D/g, '').slice(0, MOST_FIGURES);

/** The ball in metres; what is wrong with it when it is none. */
export function ballKeyed(
  { carry, side, hand }: Keyed,
  units: Units,
): { readonly carryM: number; readonly sideM?: number } | 'no carry' | 'no side' {
  const carryM = readCarryM(carry, units);
  if (carryM === undefined || Number.isNaN(carryM)) return 'no carry';
  if (side === '') return { carryM };
  const sideM = Number(side) === 0 ? 0 : readCarryM(side, units);
  if (sideM === undefined || Number.isNaN(sideM) || sideM > 0.9 * carryM) return 'no side';
  return { carryM, sideM: hand === 'left' && sideM > 0 ? -sideM : sideM };
}

/** Where a tapped place is, as it would be keyed: whole units of carry, straight from the ball, and of side. */
export function keyedAt(alongM: number, acrossM: number, unitM: number): Keyed {
  const whole = (m: number): string => String(Math.round(m / unitM));
  return {
    carry: whole(Math.hypot(alongM, acrossM)),
    side: whole(Math.abs(acrossM)),
    hand: acrossM < 0 ? 'left' : 'right',
  };
}
