import type { Choice, PlanePoint } from '@leeway/engine';
import { offsetOf, placeAt } from '@leeway/engine';
import { randomOf } from '../plane/seed.ts';

/** What is drawn of one shot of a plan, in metres on the ground. */
export interface ShotMarks {
  readonly choice: Choice;
  readonly arms: readonly Arm[];
  /** Balls of the pattern at rest, drawn with a fixed seed: good strikes and mishits. */
  readonly good: readonly PlanePoint[];
  readonly mishits: readonly PlanePoint[];
}

/** One arm of room: how far the ball may stray this way before it costs 0.1, and then 0.25, more than expected. */
export interface Arm {
  readonly bearingRad: number;
  readonly ticksM: readonly number[];
}

const BALLS = 200;

export function shotMarks(choice: Choice): ShotMarks {
  const { priced } = choice.answer;
  const up = priced.bearingRad;
  const arm = (turn: number, key: 'leftM' | 'rightM' | 'shortM' | 'longM'): Arm[] => {
    const ticksM = choice.room.map((r) => r[key]).filter((m) => m !== null);
    return ticksM.length === 0 || choice.room[0]?.[key] === null ? [] : [{ bearingRad: up + turn, ticksM }];
  };
  return {
    choice,
    arms: [...arm(0, 'longM'), ...arm(Math.PI / 2, 'rightM'), ...arm(Math.PI, 'shortM'), ...arm(-Math.PI / 2, 'leftM')],
    ...balls(choice),
  };
}

/**
 * Balls of the chosen pattern. Where it says how far the ball flies, each is given the run of the good strike's mean on top; the solver's own run
 * follows the ground that each ball meets, so a dot beside water or sand may differ from what the solver counts by a yard or two.
 */
function balls(choice: Choice): { good: PlanePoint[]; mishits: PlanePoint[] } {
  const { priced } = choice.answer;
  const { at, lie } = choice.from;
  const { pattern } = priced;
  const good: PlanePoint[] = [];
  const mishits: PlanePoint[] = [];
  const first = pattern.parts[0];
  if (!first) return { good, mishits };
  const runM = runOf(choice);
  const random = randomOf(`${priced.option.club} ${priced.option.swing} ${lie}`);
  for (let i = 0; i < BALLS; i++) {
    let left = random.next();
    const part = pattern.parts.find((p) => (left -= p.weight) < 0) ?? first;
    const [u, v] = [random.normal(), random.normal()];
    const along = part.alongM + part.sdAlongM * u + runM;
    const across = part.acrossM + part.sdAcrossM * (part.corr * u + Math.sqrt(1 - part.corr ** 2) * v);
    (part === first ? good : mishits).push(placeAt(at, priced.bearingRad, along, across));
  }
  return { good, mishits };
}

/** How far a choice's good strike runs on from where its pattern has it, metres: nought for a pattern of balls at rest. */
export function runOf({ answer, from }: Choice): number {
  const { priced, spot } = answer;
  const good = priced.pattern.parts[0];
  return offsetOf(spot, from.at, priced.bearingRad).alongM - (good?.alongM ?? 0);
}
