import { normalQuantile } from '../math/normal.ts';
import { inDraws } from './draws.ts';
import type { Nudge } from './nudge.ts';

import type { NormalPart, Option, Pattern } from '../player/option.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';

export type { Nudge };

/** How sure a figure of expected strokes is, and the balls of the option it leans on. */
export interface Doubt {
  readonly se: number;
  readonly balls: number;
  readonly lo80: number;
  readonly hi80: number;
}

const EIGHTY = normalQuantile(0.9);

/** Nudges smaller than this are no doubt at all. */
const NOUGHT = 1e-9;

/**
 * The delta method over an option's pattern: each parameter moved one standard error up and down, the stroke priced again by the fast rule
 * at the same aim, half the difference and half the second difference kept. A stated pattern has no doubt.
 */
export function nudgesOf(solution: HoleSolution, from: BallState, stroke: Stroke): Nudge[] {
  const { option } = stroke;
  const pattern = option.byLie[from.lie];
  if (pattern === undefined) return [];
  const { doubt } = option;
  const priced = (moved: Pattern): number =>
    solution.strokesOf(from, { ...stroke, option: { ...option, byLie: { [from.lie]: moved } } });
  const sure = [doubt.seAlongM, doubt.seAcrossM, doubt.seLogSdAlong, doubt.seLogSdAcross, doubt.seMishitShare];
  if (sure.every((se) => !(se > 0))) return [];
  const middle = priced(pattern);
  const nudge = (name: string, se: number, move: (by: number) => Pattern): Nudge[] => {
    if (!(se > 0)) return [];
    const [up, down] = [priced(move(se)), priced(move(-se))];
    const strokes = (up - down) / 2;
    const bend = (up + down) / 2 - middle;
    const none = Math.abs(strokes) < NOUGHT && Math.abs(bend) < NOUGHT;
    return none ? [] : [{ key: `${option.club}\n${option.swing}\n${name}`, strokes, bend }];
  };
  return [
    ...nudge('along', doubt.seAlongM, (by) => good(pattern, (p) => ({ ...p, alongM: p.alongM + by }))),
    ...nudge('across', doubt.seAcrossM, (by) => good(pattern, (p) => ({ ...p, acrossM: p.acrossM + by }))),
    ...nudge('sd along', doubt.seLogSdAlong, (by) =>
      good(pattern, (p) => ({ ...p, sdAlongM: p.sdAlongM * Math.exp(by) })),
    ),
    ...nudge('sd across', doubt.seLogSdAcross, (by) =>
      good(pattern, (p) => ({ ...p, sdAcrossM: p.sdAcrossM * Math.exp(by) })),
    ),
    ...nudge('mishits', doubt.seMishitShare, (by) => withMishits(pattern, by)),
  ];
}

const good = (pattern: Pattern, move: (p: NormalPart) => NormalPart): Pattern => ({
  ...pattern,
  parts: pattern.parts.map((p, i) => (i === 0 ? move(p) : p)),
});

/** The share of mishits moved by `by` and kept in [0, 0.99]; they keep their proportions among themselves. */
function withMishits(pattern: Pattern, by: number): Pattern {
  const [first, ...rest] = pattern.parts;
  const share = rest.reduce((sum, p) => sum + p.weight, 0);
  if (first === undefined || share <= 0) return pattern;
  const moved = Math.min(0.99, Math.max(0, share + by));
  const parts = rest.map((p) => ({ ...p, weight: (p.weight * moved) / share }));
  return { ...pattern, parts: [{ ...first, weight: 1 - moved }, ...parts] };
}

/** Expected strokes over the posterior of the pattern, not at its mean alone: they are dearer where strokes bend upwards in what is not known. */
export const posteriorMean = (strokes: number, nudges: readonly Nudge[]): number =>
  nudges.reduce((sum, n) => sum + (n.bend ?? 0), strokes);

/** Standard error of a sum of nudges: what shares a parameter is added, what does not is added in squares. */
export function standardError(nudges: readonly Nudge[]): number {
  const byKey = new Map<string, number>();
  for (const n of nudges) byKey.set(n.key, (byKey.get(n.key) ?? 0) + n.strokes);
  return Math.sqrt([...byKey.values()].reduce((sum, s) => sum + s * s, 0));
}

/** The doubt of expected strokes: four times in five the truth lies between `lo80` and `hi80`. */
export function doubtOf(
  strokes: number,
  nudges: readonly Nudge[],
  option: { readonly doubt: Pick<Option['doubt'], 'balls'> },
): Doubt {
  const se = standardError(nudges);
  return { se, balls: option.doubt.balls, lo80: strokes - EIGHTY * se, hi80: strokes + EIGHTY * se };
}

/** The difference below which two choices are a tie. */
export const TIE_STROKES = 0.02;
export const WORSE_DRAWS = 0.8;

/** A tie: less than 0.02 strokes worse, or worse in fewer than 8 of 10 common draws of the patterns. */
export function isTie(worse: Doubtful, better: Doubtful): boolean {
  return worse.strokes - better.strokes < TIE_STROKES || worseShare(worse, better) < WORSE_DRAWS;
}

/** A figure of expected strokes with what is doubtful about it. */
export interface Doubtful {
  readonly strokes: number;
  readonly nudges: readonly Nudge[];
}

/** The share of common draws of the patterns in which one stroke is dearer than another. */
export function worseShare(worse: Doubtful, better: Doubtful): number {
  const difference = worse.strokes - better.strokes;
  if (worse.nudges.length + better.nudges.length === 0) return difference > 0 ? 1 : 0;
  const against = better.nudges.map((n) => ({ ...n, strokes: -n.strokes, bend: -(n.bend ?? 0) }));
  const draws = inDraws(difference, [...worse.nudges, ...against]);
  return draws.reduce((count, d) => count + (d > 0 ? 1 : 0), 0) / draws.length;
}
