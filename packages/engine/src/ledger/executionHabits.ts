import { nudgesOf, TIE_STROKES } from '../choice/doubt.ts';
import { bearingRad } from '../choice/view.ts';
import { normalQuantile } from '../math/normal.ts';
import type { PlayerFile } from '../player/file.ts';
import type { PlayerModel } from '../player/option.ts';
import { solveHole } from '../value/solve.ts';
import type { HoleAccount, ShotAccount } from './account.ts';
import { dearest, type Example, type HabitAccount, ranked } from './habitAccount.ts';
import { StrokesLeft } from './left.ts';
import { type PlayedShot } from './played.ts';
import { EXECUTION_HABITS, type ExecutionHabit, withUsual } from './reference.ts';

/** A hole that was played, with its account. */
export interface AccountedHole {
  readonly round: number;
  readonly left: StrokesLeft;
  readonly shots: readonly PlayedShot[];
  readonly account: HoleAccount;
}

export interface ExecutionHabits {
  readonly habits: readonly HabitAccount<ExecutionHabit>[];
  /** Parts of which nothing is known but the prior, so that there is nothing to compare. */
  readonly unmeasured: readonly ExecutionHabit[];
}

const EIGHTY = normalQuantile(0.9);

/** Of the doubt, what all clubs share because they lean on one prior: our assumption, about what 30 balls a club leave of it. */
const SHARED = 0.5;

/** The parameters of an option's doubt that a habit turns on, as nudges name them. */
const DOUBTS: { readonly [H in ExecutionHabit]: readonly string[] } = {
  strike: ['mishits'],
  direction: ['sd across'],
  length: ['sd along'],
  shortGame: ['mishits', 'sd across', 'sd along'],
  putting: [],
};

/**
 * What each part of the player's pattern costs in 18 of the holes played, over the same player with that part as it is usual at their index: every hole solved again.
 * The interval is of the pattern's doubt, by the delta method over the strokes that were played. A part that was never measured is named apart.
 * `told` hears of every solve.
 */
export function executionHabits(
  file: PlayerFile,
  holes: readonly AccountedHole[],
  told: (done: number, of: number) => void = () => undefined,
): ExecutionHabits {
  if (holes.length === 0) return { habits: [], unmeasured: EXECUTION_HABITS };
  const lefts = [...new Set(holes.map(({ left }) => left))];
  const usual = EXECUTION_HABITS.map((habit) => ({ habit, player: withUsual(file, habit) }));
  const measured = usual.flatMap(({ habit, player }) => (player === undefined ? [] : [{ habit, player }]));
  const doubts = doubtsOf(holes);
  let done = 0;
  const habits = measured.map(({ habit, player }): HabitAccount<ExecutionHabit> => {
    const costs = new Map(
      lefts.map((left) => {
        told(done++, measured.length * lefts.length);
        return [left, costOn(left, player)];
      }),
    );
    const each = 18 / holes.length;
    const mean = each * holes.reduce((sum, { left }) => sum + (costs.get(left) ?? 0), 0);
    const wide = EIGHTY * each * Math.sqrt(doubts(habit));
    return {
      habit,
      strokesPerRound: { mean, lo80: mean - wide, hi80: mean + wide },
      shown: mean - wide >= TIE_STROKES,
      examples: dearest(
        holes.flatMap((hole) => examplesOf(hole, habit)),
        TIE_STROKES,
      ),
    };
  });
  return {
    habits: ranked(habits),
    unmeasured: EXECUTION_HABITS.filter((habit) => !measured.some((m) => m.habit === habit)),
  };
}

function costOn(left: StrokesLeft, usual: PlayerModel): number {
  const { ground, day } = left.solution;
  const tee = { at: ground.ball, lie: 'tee' } as const;
  const as = new StrokesLeft(solveHole(ground, usual, day), usual);
  return (left.from(tee) ?? NaN) - (as.from(tee) ?? NaN);
}

/** Square of the standard error of the strokes of all holes, by habit: nudges that share a parameter add up. */
function doubtsOf(holes: readonly AccountedHole[]): (habit: ExecutionHabit) => number {
  const sums = { long: new Map<string, number>(), short: new Map<string, number>() };
  for (const { left, shots } of holes) {
    for (const { from, club, swing, aim } of shots) {
      const option = left.player.options.find((o) => o.club === club && o.swing === swing);
      if (option === undefined || from.lie === 'green' || option.byLie[from.lie] === undefined) continue;
      const state = { at: from.at, lie: from.lie };
      const at = aim === undefined ? left.bests(state)?.of(option)?.bearingRad : bearingRad(from.at, aim);
      if (at === undefined) continue;
      const into = option.evidence === 'short game' ? sums.short : sums.long;
      for (const { key, strokes } of nudgesOf(left.solution, state, { option, bearingRad: at })) {
        into.set(key, (into.get(key) ?? 0) + strokes);
      }
    }
  }
  return (habit) => {
    const each = [...(habit === 'shortGame' ? sums.short : sums.long)].flatMap(([key, strokes]) =>
      DOUBTS[habit].includes(key.split('\n')[2] ?? '') ? [strokes] : [],
    );
    const apart = each.reduce((sum, x) => sum + x * x, 0);
    const together = each.reduce((sum, x) => sum + x, 0) ** 2;
    return (1 - SHARED) * apart + SHARED * together;
  };
}

const examplesOf = ({ round, account, left }: AccountedHole, habit: ExecutionHabit): readonly Example[] =>
  account.shots.flatMap((shot) => {
    const strokes = shown(shot, habit);
    return strokes === undefined ? [] : [{ round, hole: left.solution.ground.hole, shot: shot.shot, strokes }];
  });

/** What the ball cost beyond the pattern's mean by this part. */
function shown({ part, loss, execution }: ShotAccount, habit: ExecutionHabit): number | undefined {
  if (habit === 'shortGame') return part === 'short game' ? loss : undefined;
  if (habit === 'putting') return part === 'putt' ? loss : undefined;
  return execution?.[habit];
}
