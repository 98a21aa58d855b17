import { distanceM } from '../geometry/segment.ts';
import type { BallState } from '../value/solution.ts';
import { aimsOf } from './aims.ts';
import { type ChoiceLoss, choiceLoss, meanChoice } from './choiceLoss.ts';
import { type ExecutionLoss, executionLoss } from './execution.ts';
import { type Finish, finishOn } from './finish.ts';
import type { StrokesLeft } from './left.ts';
import { type Part, partOf, type PlayedShot } from './played.ts';

/** What one stroke cost beyond what it should have. */
export interface ShotAccount {
  readonly shot: number;
  readonly part: Part;
  /** Strokes lost against the player's own best play of the hole: 1 + penalties + V(next) - V(now). A gain is negative. */
  readonly loss: number;
  readonly penaltyStrokes: number;
  /** Of a long shot with a known club and swing: loss = the parts of the choice + the parts of the execution, to rounding. */
  readonly choice?: ChoiceLoss;
  readonly execution?: ExecutionLoss;
  /** Of a long shot whose aim was noted. */
  readonly finish?: Finish;
  /** Was the aim noted? Otherwise the choice is a mean over what it may have been. */
  readonly aimNoted: boolean;
}

/** Why a stroke has no account of its choice, or a hole none at all. */
export type Untold = { readonly shot: number; readonly why: 'club not known' | 'nothing is played from that lie' };

export interface HoleAccount {
  readonly shots: readonly ShotAccount[];
  /** Strokes expected from the tee; the losses are the score less this. */
  readonly expected: number;
  readonly score: number;
  readonly untold: readonly Untold[];
}

/**
 * Accounts for a hole that was played to the end, its strokes in order. A stroke's next is where the following one was played from. `undefined` when a
 * stroke was played from a lie that the player has nothing from.
 */
export function accountHole(left: StrokesLeft, shots: readonly PlayedShot[]): HoleAccount | undefined {
  const values = shots.map(({ from }) => left.from(from));
  if (values.some((v) => v === undefined)) return undefined;
  const untold: Untold[] = [];
  const accounts = shots.map((played, i): ShotAccount => {
    const now = values[i] ?? 0;
    const after = played.finish === 'holed' ? 0 : (values[i + 1] ?? 0);
    const cost = 1 + played.penaltyStrokes + after;
    const part = partOf(played.from, distanceM(played.from.at, left.solution.ground.flag));
    const split = part === 'long shot' ? splitOf(left, played, cost) : undefined;
    if (part === 'long shot' && split === undefined) untold.push({ shot: played.shot, why: 'club not known' });
    return {
      shot: played.shot,
      part,
      loss: cost - now,
      penaltyStrokes: played.penaltyStrokes,
      aimNoted: played.aim !== undefined,
      ...split,
    };
  });
  return {
    shots: accounts,
    expected: values[0] ?? 0,
    score: shots.reduce((sum, s) => sum + 1 + s.penaltyStrokes, 0),
    untold,
  };
}

function splitOf(
  left: StrokesLeft,
  played: PlayedShot,
  cost: number,
): Pick<ShotAccount, 'choice' | 'execution' | 'finish'> | undefined {
  const { solution, player } = left;
  const option = player.options.find((o) => o.club === played.club && o.swing === played.swing);
  const { at, lie } = played.from;
  if (option === undefined || lie === 'green') return undefined;
  const from: BallState = { at, lie };
  const bests = left.bests(from);
  if (bests === undefined || option.byLie[lie] === undefined) return undefined;
  const finish = played.finish === 'holed' ? solution.ground.flag : played.finish;
  const strike = played.strike === undefined ? {} : { strike: played.strike };
  const each = aimsOf(solution, bests, option, played.aim).map(({ bearingRad, weight }) => {
    const priced = solution.price(from, { option, bearingRad });
    return {
      weight,
      loss: choiceLoss(bests, option, priced),
      execution: executionLoss(solution, from, priced, { finish, cost, ...strike }),
      finish: finishOn(from.at, priced, finish),
    };
  });
  const mean = (pick: (e: ExecutionLoss) => number): number =>
    each.reduce((sum, { weight, execution }) => sum + weight * pick(execution), 0);
  return {
    choice: meanChoice(each),
    execution: {
      strike: mean((e) => e.strike),
      direction: mean((e) => e.direction),
      length: mean((e) => e.length),
      luck: mean((e) => e.luck),
    },
    ...(played.aim === undefined || each[0] === undefined ? {} : { finish: each[0].finish }),
  };
}
