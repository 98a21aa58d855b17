import { YARD_M } from '@leeway/engine';
import type { TrueSwing } from './virtualPlayer.ts';

/** A made-up player: what the Player file says before a ball is hit, the seed of the balls, and the truth they are hit from. */
export interface MadeUpPlayer {
  /** Name of the files, without ending. */
  readonly file: string;
  readonly name: string;
  readonly hand: 'right' | 'left';
  readonly sex?: 'woman';
  readonly handicapIndex: number;
  readonly seed: number;
  readonly clubs: readonly {
    readonly name: string;
    readonly loftDeg: number;
    readonly claimedYd?: number;
    readonly swings?: readonly string[];
  }[];
  readonly swings: readonly BallsOfSwing[];
}

/** A true swing and how many balls of it are hit. */
export type BallsOfSwing = TrueSwing & { readonly balls: number };

/** A true swing by its figures as a coach says them: yards, degrees to the right of the line, mishits as a share. */
export interface SaidSwing {
  readonly club: string;
  readonly swing?: string;
  readonly balls: number;
  readonly carryYd: number;
  readonly directionDeg: number;
  readonly sdDirectionDeg: number;
  readonly mishitShare: number;
}

/** The swings of a player whose good strikes all spread by the same share of their carry. */
export function trueSwings(sdCarryShare: number, said: readonly SaidSwing[]): readonly BallsOfSwing[] {
  return said.map(({ carryYd, swing = 'full', ...rest }) => {
    const carryM = carryYd * YARD_M;
    return { swing, ...rest, carryM, sdCarryM: sdCarryShare * carryM };
  });
}
