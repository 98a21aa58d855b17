import type { Turn } from '@leeway/desk';
import { doubtOf, type HolePlan, type PlannedShot } from '@leeway/engine';
import type { FlagAsk } from '../asks.ts';
import { dayOf, type OpenHole } from './openHole.ts';
import { planOn } from './planOn.ts';

/** Moves the flag or turns the wind, and chooses the shown shot anew; the others stay as they were planned. The doubt of the later ones is the one they had. */
export function followFlag(open: OpenHole, { flag, wind, shot }: FlagAsk): PlannedShot {
  const held = shownShot(open, shot);
  open.study.turnWind(wind === undefined ? open.study.day : dayOf(wind), 'following');
  const { flag: stands } = open.study.ground;
  if (stands.eastM !== flag.eastM || stands.northM !== flag.northM)
    open.study.moveFlag(flag, 'following', held.choice.from.at);
  stand(open);
  const choice = open.study.ask(held.choice.from);
  if (choice === undefined) throw new Error(`nothing can be played from ${held.choice.from.lie}`);
  const later = open.plan.shots.slice(shot + 1).flatMap((s) => s.choice.answer.nudges);
  const planned: PlannedShot = {
    choice,
    dropped: held.dropped,
    doubtOf: (shown) => doubtOf(shown.strokes, [...shown.nudges, ...later], shown.priced.option),
  };
  open.plan = { ...open.plan, shots: open.plan.shots.with(shot, planned) };
  return planned;
}

/** Moves the flag and plans the hole anew: the balls up to the shown shot's stay where they lie, and the plan goes on from its spot. */
export async function settleFlag(
  open: OpenHole,
  { flag, wind, shot }: FlagAsk,
  turn: Pick<Turn, 'pause'>,
): Promise<HolePlan> {
  shownShot(open, shot);
  const { flag: stands } = open.study.ground;
  const day = wind === undefined ? open.study.day : dayOf(wind);
  const same = JSON.stringify(open.study.day) === JSON.stringify(day);
  if (open.settled && same && stands.eastM === flag.eastM && stands.northM === flag.northM) return open.plan;
  const balls = open.plan.shots.slice(0, shot + 1).map(({ choice, dropped }) => ({ state: choice.from, dropped }));
  open.study.turnWind(day, 'settled');
  open.study.moveFlag(flag, 'settled');
  stand(open);
  open.plan = await planOn(open.study, balls, turn);
  open.settled = true;
  return open.plan;
}

/** The choices are those from before until they are made anew, but what is drawn under them is asked of the solution that stands. */
function stand(open: OpenHole): void {
  open.settled = false;
  open.plan = { ...open.plan, solution: open.study.solution };
}

function shownShot({ plan }: OpenHole, shot: number): PlannedShot {
  const held = plan.shots[shot];
  if (held === undefined) throw new RangeError(`there is no shot ${shot + 1} in this plan`);
  return held;
}
