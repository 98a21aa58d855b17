import { holeDocument, shotDocument } from '@leeway/contract';
import type { PlannedShot } from '@leeway/engine';
import type { HoleAnswer, ShotAnswer } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** The whole plan, as the page shows it. */
export function holeAnswer({ plan, ask, course, attribution }: OpenHole): HoleAnswer {
  const { ground } = plan.solution;
  return {
    plan: holeDocument(plan, ask.units),
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    flag: ground.flag,
    green: ground.areas.filter((area) => area.surface === 'green').map((area) => area.polygon),
    shots: plan.shots.map(({ choice }) => ({ ball: choice.from.at, spot: choice.answer.spot })),
  };
}

/** One shot, as the page shows it while the flag moves. */
export const shotAnswer = ({ plan, ask }: OpenHole, shot: PlannedShot, index: number): ShotAnswer => ({
  shot: index,
  document: shotDocument(shot, plan.solution.ground, ask.units),
  flag: plan.solution.ground.flag,
  spot: shot.choice.answer.spot,
});
