import type { Turn } from '@leeway/desk';
import { type HolePlan, type NextBall, planSteps, type Study } from '@leeway/engine';

/** The plan of an open hole through the balls that lie already and on from the last, letting messages in between shots. */
export async function planOn(study: Study, balls: readonly NextBall[], turn: Pick<Turn, 'pause'>): Promise<HolePlan> {
  const steps = planSteps(study.solution, study.player, balls);
  for (;;) {
    await turn.pause();
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
