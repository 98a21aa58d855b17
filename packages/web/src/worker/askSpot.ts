import { showStroke, strokeTo } from '@leeway/engine';
import type { SpotAnswer, SpotAsk } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** What a spot of the user's own costs beside the choice. Both are priced alike. */
export function askSpot({ plan, player }: OpenHole, { shot, spot }: SpotAsk): SpotAnswer {
  const choice = plan.shots[shot]?.choice;
  if (choice === undefined) throw new RangeError(`there is no shot ${shot + 1} in this plan`);
  const stroke = strokeTo(plan.solution, player, choice.from, spot);
  if (stroke === undefined) throw new Error(`nothing can be played from ${choice.from.lie}`);
  const shown = showStroke(plan.solution, choice.from, stroke);
  return {
    option: { club: stroke.option.club, swing: stroke.option.swing },
    spot: shown.spot,
    expectedStrokes: shown.strokes,
    costsMore: shown.strokes - choice.answer.strokes,
  };
}
