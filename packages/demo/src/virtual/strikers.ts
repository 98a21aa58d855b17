import {
  fitSession,
  fittedPlayer,
  partsOf,
  type PlayerFile,
  type Random,
  spreadPrior,
  type StoredPattern,
} from '@leeway/engine';
import { ODILE_VARGA } from '../odileVarga.ts';
import { playerOf } from '../playerFile.ts';
import type { VirtualSwing } from './virtualBag.ts';
import { virtualBalls } from './virtualBalls.ts';

/** By how much a made-up player is worse than is usual at their index: multiples of the share of mishits and of the two spreads. */
export interface Flaw {
  readonly mishits: number;
  readonly direction: number;
  readonly length: number;
}

const file: PlayerFile = playerOf(ODILE_VARGA);

/** A player off 14 who is usual in all but the flaw. */
export function striker(flaw: Flaw): readonly VirtualSwing[] {
  return ODILE_VARGA.swings.map(({ club, swing, carryM }): VirtualSwing => {
    const usual = spreadPrior(file, club, swing);
    return {
      club,
      swing,
      carryM,
      sdCarryM: usual.sdCarryShare * carryM * flaw.length,
      directionDeg: 0,
      sdDirectionDeg: usual.directionSdDeg * flaw.direction,
      mishitShare: Math.min(0.6, usual.mishitShare * flaw.mishits),
      corr: 0,
    };
  });
}

/** The player as nobody knows them: every pattern the truth. */
export const truthOf = (swings: readonly VirtualSwing[]): PlayerFile => ({
  ...file,
  patterns: swings.map((s): StoredPattern => ({
    club: s.club,
    swing: s.swing,
    components: partsOf({ ...s, directionSdDeg: s.sdDirectionDeg, full: s.swing === 'full' }),
    fit: {
      model: 'two-part',
      n: 10_000,
      carryM: s.carryM,
      seCarryM: 0,
      directionDeg: 0,
      seDirectionDeg: 0,
      sdCarryM: s.sdCarryM,
      seLogSdCarry: 0,
      directionSdDeg: s.sdDirectionDeg,
      seLogDirectionSd: 0,
      corr: 0,
      mishitShare: s.mishitShare,
      seMishitShare: 0,
    },
  })),
});

/** The player as `balls` of every swing on a range show them. */
export function measured(swings: readonly VirtualSwing[], balls: number, random: Random): PlayerFile {
  const hit = swings.map((s) => ({ club: s.club, swing: s.swing, balls: virtualBalls(s, balls, random) }));
  return fittedPlayer(file, fitSession(file, hit), 'yd');
}
