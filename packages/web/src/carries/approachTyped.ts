import type { Approach } from '@leeway/contract';
import type { Units } from '@leeway/engine';
import { readCarryM } from './claims.ts';

/** How an approach ended: a mark was found, or the side that it missed the green on. */
export const ENDS = ['mark', 'short', 'long', 'left', 'right', 'away'] as const;
export type End = (typeof ENDS)[number];

/** An approach as it is typed, lengths in the units of the page; paces for the mark are yards, or metres. */
export interface TypedApproach {
  readonly club: string;
  readonly swing: string;
  readonly flag: string;
  readonly front: string;
  readonly back: string;
  readonly width: string;
  readonly end: End;
  readonly beyond: string;
  readonly depth: 'past' | 'short';
  readonly across: string;
  readonly hand: 'left' | 'right';
}

export type BadApproach = 'club' | 'flag' | 'green' | 'mark';

/** The approach as it is kept, the flag in the middle of the green's width; else what is wrong with it. */
export function approachOf(typed: TypedApproach, date: string, units: Units): Approach | BadApproach {
  const [toFlagM, frontM, backM, widthM] = [typed.flag, typed.front, typed.back, typed.width].map((text) =>
    readCarryM(text, units),
  );
  if (typed.club === '') return 'club';
  if (!isLength(toFlagM)) return 'flag';
  if (!isLength(frontM) || !isLength(backM) || !isLength(widthM)) return 'green';
  if (frontM < 5 || frontM > toFlagM || backM < toFlagM || frontM >= backM || widthM > 150) return 'green';
  const green = { frontM, backM, leftM: widthM / 2, rightM: widthM / 2 };
  const { club, swing, end } = typed;
  const common = { date, club, swing, toFlagM, green };
  if (end !== 'mark') return { ...common, found: { missed: end } };
  const [beyondM, acrossM] = [paces(typed.beyond, units), paces(typed.across, units)];
  if (beyondM === undefined || acrossM === undefined) return 'mark';
  const beyondFlagM = typed.depth === 'short' ? -beyondM : beyondM;
  const rightOfFlagM = typed.hand === 'left' ? -acrossM : acrossM;
  const along = toFlagM + beyondFlagM;
  if (along < frontM || along > backM || acrossM > widthM / 2) return 'mark';
  return { ...common, found: { beyondFlagM: beyondFlagM + 0, rightOfFlagM: rightOfFlagM + 0 } };
}

const isLength = (m: number | undefined): m is number => m !== undefined && !Number.isNaN(m);

/** Paces of the mark; nothing typed is nought. */
function paces(text: string, units: Units): number | undefined {
  if (text.trim() === '' || /^0+$/.test(text.trim())) return 0;
  const m = readCarryM(text, units);
  return isLength(m) ? m : undefined;
}
