import type { HoleSolution } from '@leeway/engine';
import { type ReferenceSolution, type ReferenceState, TABLE_LIES } from '@leeway/engine/testdata';

/** What the bench and its tests ask of a solution. */
export type Asked = Omit<HoleSolution, 'next' | 'unplayable' | 'scores' | 'playedFrom' | 'greenTakenAsFlat'>;

/** Errors of a solution against the reference values of its hole, strokes. */
export interface Accuracy {
  readonly teeError: number;
  /** What the chosen option and aim cost more than the best, by the reference's own table of costs. */
  readonly teeRegret: number;
  readonly worstStateError: number;
  readonly worstRegret: number;
  /** Root mean square error over the reference's 10 m table of states, greens left out. */
  readonly tableRms: number;
}

const FIRST_AIM_DEG = -60;
const AIM_STEP_DEG = 0.5;

export function accuracyOf(solution: Asked, reference: ReferenceSolution): Accuracy {
  const states = reference.states.map((s) => {
    const [best] = solution.best({ at: { eastM: s.x, northM: s.y }, lie: s.lie });
    if (best === undefined) throw new Error('no stroke from a reference state');
    return { error: best.strokes - s.V, regret: regretOf(s, best.option.swing, aimDeg(solution, s, best.bearingRad)) };
  });
  const squares = reference.table.rows.flatMap(([eastM, northM, place, value]) => {
    const lie = TABLE_LIES[place];
    if (lie === undefined) return [];
    const [best] = solution.best({ at: { eastM, northM }, lie });
    return [((best?.strokes ?? Number.NaN) - value) ** 2];
  });
  return {
    teeError: states[0]?.error ?? Number.NaN,
    teeRegret: states[0]?.regret ?? Number.NaN,
    worstStateError: Math.max(...states.map((s) => Math.abs(s.error))),
    worstRegret: Math.max(...states.map((s) => s.regret)),
    tableRms: Math.sqrt(squares.reduce((sum, sq) => sum + sq, 0) / squares.length),
  };
}

/** Aim in degrees to the right of the line to the flag. */
function aimDeg(solution: Asked, s: ReferenceState, bearingRad: number): number {
  const { flag } = solution.ground;
  const turn = bearingRad - Math.atan2(flag.eastM - s.x, flag.northM - s.y);
  return (Math.atan2(Math.sin(turn), Math.cos(turn)) * 180) / Math.PI;
}

/** By the reference's costs over options and aims, linear between its aims; a choice outside the table counts as the table's dearest. */
function regretOf(s: ReferenceState, option: string, aim: number): number {
  const row = s.Q[option];
  const at = (aim - FIRST_AIM_DEG) / AIM_STEP_DEG;
  const low = row?.[Math.floor(at)];
  const high = row?.[Math.floor(at) + 1];
  if (low === undefined || high === undefined) return Math.max(...Object.values(s.Q).flat()) - s.V;
  const t = at - Math.floor(at);
  const least = Math.min(...Object.values(s.Q).flat());
  return Math.max(0, low * (1 - t) + high * t - least);
}
