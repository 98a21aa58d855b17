import { planDocument, type Fault, type PlanDocument, type Read } from '@leeway/contract';
import {
  canPlay,
  type Day,
  type GivenFlag,
  type HolePlan,
  planHole,
  type PlayerFile,
  playerModel,
  solveHole,
} from '@leeway/engine';
import { readGround } from '@leeway/formats';

/** What a plan of a round is made from: plain data, so that it can be handed to a thread. */
export interface RoundAsked {
  readonly ground: { readonly file: string; readonly text: string };
  readonly course: string;
  readonly player: PlayerFile;
  readonly day: Day;
  /** Every hole unless said. */
  readonly holes?: readonly string[];
  readonly flags: readonly { readonly hole: string; readonly at: GivenFlag }[];
}

/** Plans hole by hole; `tell` hears how many are done. Refused: ground that cannot be read, a hole that is not there, a player without patterns. */
export function planHoles(asked: RoundAsked, tell: (done: number, total: number) => void): Read<PlanDocument> {
  const { ground, course, player: file, day, holes, flags } = asked;
  const read = readGround(ground.text, ground.file);
  if (read.value === undefined) return { faults: read.faults };
  const player = playerModel(file);
  if (!canPlay(player))
    return refuse(file.name, 'no pattern from the tee, or none from the fairway', 'patterns from both');
  const numbers = holes ?? read.value.holes.map(({ hole }) => hole);
  const plans: HolePlan[] = [];
  tell(0, numbers.length);
  for (const number of numbers) {
    const flag = flags.find(({ hole }) => hole === number)?.at;
    const placed = flag === undefined ? read : readGround(ground.text, ground.file, { hole: number, flag });
    const hole = placed.value?.holes.find((h) => h.hole === number);
    if (hole === undefined)
      return placed.value === undefined
        ? { faults: placed.faults }
        : refuse(course, `hole ${number}`, 'a hole of the course');
    const plan = planHole(solveHole(hole, player, day), player);
    if (plan.shots.length === 0)
      return refuse(file.name, `hole ${number}: no option from the tee`, 'a pattern from the tee');
    plans.push(plan);
    tell(plans.length, numbers.length);
  }
  const { attribution } = read.value;
  const heading = {
    player: file.name,
    units: file.units ?? ('yd' as const),
    course,
    ...(attribution === undefined ? {} : { attribution }),
  };
  return { value: planDocument(plans, heading), faults: [] };
}

function refuse(file: string, found: string, expected: string): { readonly faults: readonly Fault[] } {
  return { faults: [{ code: 'cannot-plan', level: 'refused', file, found, expected }] };
}
