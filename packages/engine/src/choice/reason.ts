import { distanceM } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { HoleSolution } from '../value/solution.ts';
import { type Because, explain } from './explain.ts';
import type { Landmark } from './landmark.ts';
import { isTie } from './doubt.ts';
import type { PlainLine } from './plainLine.ts';
import type { Room } from './room.ts';
import type { ShownStroke } from './shown.ts';
import { placeAt } from './view.ts';

/** Why the answer is what it is, as data; `wordReason` puts it in words. */
export type Reason =
  | { readonly kind: 'plain'; readonly plain: PlainLine; readonly because: Because }
  | { readonly kind: 'plain tie'; readonly plain: PlainLine }
  | {
      readonly kind: 'depth';
      readonly dear: 'short' | 'long';
      readonly dearM: number;
      readonly easyM: number | null;
      readonly landmark: Landmark;
    }
  | { readonly kind: 'held back'; readonly stroke: ShownStroke }
  | { readonly kind: 'unmapped'; readonly chance: number }
  | { readonly kind: 'leans on unmapped' };

/** A chance below this is nought. */
export const NOUGHT_CHANCE = 0.0005;
const DEPTH_RATIO = 2;
const DEPTH_LIMIT_M = 25;
const INTO_M = 1;
const DANGERS: ReadonlySet<string> = new Set(['bunker', 'penalty', 'recovery', 'out']);

export interface ReasonsAsked {
  readonly answer: ShownStroke;
  readonly plain: PlainLine | undefined;
  readonly heldBack: ShownStroke | undefined;
  readonly room: readonly Room[];
}

/** The reasons in the order they are told. None claims a loss that no mapped danger, green or length supports. */
export function reasonsOf(
  solution: HoleSolution,
  marks: ReadonlyMap<number, Landmark>,
  { answer, plain, heldBack, room }: ReasonsAsked,
): Reason[] {
  const reasons: Reason[] = [];
  if (plain !== undefined && !isSame(plain.shown, answer)) reasons.push(plainReason(marks, answer, plain));
  const depth = depthReason(solution, marks, answer, room);
  if (depth !== undefined) reasons.push(depth);
  if (heldBack !== undefined) reasons.push({ kind: 'held back', stroke: heldBack });
  if (solution.isUnmapped(answer.spot)) reasons.push({ kind: 'leans on unmapped' });
  const chance = answer.priced.chances.unmapped;
  if (chance >= NOUGHT_CHANCE) reasons.push({ kind: 'unmapped', chance });
  return reasons;
}

/** One stroke to a player: the same option, at spots that no one could aim apart. */
const SAME_M = 0.9;
const isSame = (a: ShownStroke, b: ShownStroke): boolean =>
  a.priced.option === b.priced.option && distanceM(a.spot, b.spot) < SAME_M;

function plainReason(marks: ReadonlyMap<number, Landmark>, answer: ShownStroke, plain: PlainLine): Reason {
  if (isTie(plain.shown, answer)) return { kind: 'plain tie', plain };
  return { kind: 'plain', plain, because: explain(marks, answer.priced, plain.shown.priced) };
}

/** Told when one side of the spot, short or long, gives out at a mapped danger in less than half the room of the other. */
function depthReason(
  solution: HoleSolution,
  marks: ReadonlyMap<number, Landmark>,
  answer: ShownStroke,
  room: readonly Room[],
): Reason | undefined {
  const wide = room.at(-1);
  if (wide === undefined) return undefined;
  const shortM = wide.shortM ?? Number.POSITIVE_INFINITY;
  const longM = wide.longM ?? Number.POSITIVE_INFINITY;
  const dear = shortM < longM ? 'short' : 'long';
  const dearM = Math.min(shortM, longM);
  if (dearM > DEPTH_LIMIT_M || Math.max(shortM, longM) < DEPTH_RATIO * dearM) return undefined;
  const landmark = marks.get(solution.areaAt(beyondArm(answer, dear, dearM)));
  if (landmark === undefined || !DANGERS.has(landmark.surface)) return undefined;
  return { kind: 'depth', dear, dearM, easyM: dear === 'short' ? wide.longM : wide.shortM, landmark };
}

const beyondArm = (answer: ShownStroke, dear: 'short' | 'long', dearM: number): PlanePoint =>
  placeAt(answer.spot, answer.priced.bearingRad, (dear === 'long' ? 1 : -1) * (dearM + INTO_M));
