import type { NormalPart } from '@leeway/engine';
import type { Units } from '../sheet.ts';

/** A ball where it pitched: metres forward from where it was hit, and to the right of the line of aim. */
export interface Pitched {
  readonly alongM: number;
  readonly acrossM: number;
  readonly mishit: boolean;
}

/** Balls of one club and swing seen from above, to be drawn. */
export interface FromAbove {
  readonly title: string;
  readonly units: Units;
  readonly balls: readonly Pitched[];
  /** Their pattern, metres in the same frame: lines that hold 50, 80 and 95 balls in 100 are drawn. The first part is the good strike. */
  readonly parts?: readonly NormalPart[];
  /** About where the good strikes are looked for when there is neither ball nor pattern. */
  readonly aboutM?: number;
  /** The ball that is being told. */
  readonly told?: Pick<Pitched, 'alongM' | 'acrossM'>;
  /** Balls of an earlier day, drawn as crosses, and their good strike. */
  readonly before?: readonly Pitched[];
}

/** What of the ground is shown, metres: along from the ball, and as far to either side of the line. */
export interface Window {
  readonly fromM: number;
  readonly toM: number;
  readonly sideM: number;
}

const LEAST_SIDE_M = 18;
const ROOM_M = 6;

/** A window that holds all balls, the good strike three deviations wide and every other part one. */
export function windowOf({ balls, before = [], parts = [], aboutM = 100 }: FromAbove): Window {
  const reach = parts.flatMap((p, i) => {
    const wide = i === 0 ? 3 : 1;
    return [
      { alongM: p.alongM - wide * p.sdAlongM, acrossM: Math.abs(p.acrossM) + wide * p.sdAcrossM },
      { alongM: p.alongM + wide * p.sdAlongM, acrossM: 0 },
    ];
  });
  const seen = [...balls, ...before, ...reach];
  const about = seen.length === 0 || parts.length === 0 ? [0.8 * aboutM, 1.15 * aboutM] : [];
  const along = [...seen.map((p) => p.alongM), ...about];
  return {
    fromM: Math.max(0, Math.min(...along) - ROOM_M),
    toM: Math.max(...along) + ROOM_M,
    sideM: Math.max(LEAST_SIDE_M, ...seen.map((p) => Math.abs(p.acrossM) + ROOM_M)),
  };
}
