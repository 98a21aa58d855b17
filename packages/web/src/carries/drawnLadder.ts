import type { Ladder, LadderGap, Rung } from '@leeway/chart';
import type { LadderData } from '@leeway/contract';
import { isFullSwing, type PlayerModel, type Units } from '@leeway/engine';
import { behind } from '../behind.ts';

type Fitted = NonNullable<NonNullable<LadderData['fitted']>['ladder']>;
type Entry = Fitted['entries'][number];

/** The fitted ladder as it is drawn, each ball told as a mishit or not by the patterns of the same fit. */
export function drawnLadder(
  name: string,
  { entries, gaps }: Fitted,
  balls: LadderData['balls'],
  model: PlayerModel,
  units: Units,
): Ladder {
  const rungs = entries.map(({ club, swing, carryM, claimedM }): Rung => ({
    club,
    swing,
    full: isFullSwing(swing),
    carryM: carryM.mean,
    lo80M: carryM.lo80,
    hi80M: carryM.hi80,
    ...(claimedM === undefined ? {} : { claimedM }),
    balls: behind(balls, model, { club, swing }).balls.map((b) => ({ carryM: b.carryM, mishit: b.mishit })),
  }));
  return { player: name, units, rungs, gaps: gaps.map((gap) => shaft(gap, entries)) };
}

/** What of a gap no carry may reach: from where the shorter one may be to where the longer one may. */
function shaft({ fromM, toM }: Fitted['gaps'][number], entries: readonly Entry[]): LadderGap {
  const at = (m: number): Entry['carryM'] | undefined => entries.find((e) => e.carryM.mean === m)?.carryM;
  const [low, high] = [at(fromM)?.hi80 ?? fromM, at(toM)?.lo80 ?? toM];
  return low < high ? { fromM: low, toM: high } : { fromM, toM };
}
