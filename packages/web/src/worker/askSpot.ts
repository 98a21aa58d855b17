import { aimedAt, clubKey, showStroke, strokeTo, swingKey } from '@leeway/engine';
import type { Option, SpotAnswer, SpotAsk } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** What a spot of the user's own costs beside the choice. Both are priced alike. */
export function askSpot(open: OpenHole, { shot, spot, option }: SpotAsk): SpotAnswer {
  const { plan, player } = open;
  const choice = choiceOf(open, shot);
  const stroke =
    option === undefined
      ? strokeTo(plan.solution, player, choice.from, spot)
      : player.options
          .filter((o) => clubKey(o.club) === clubKey(option.club) && swingKey(o.swing) === swingKey(option.swing))
          .flatMap((o) => aimedAt(plan.solution, choice.from, o, spot) ?? [])[0];
  if (stroke === undefined)
    throw new Error(
      `${option === undefined ? 'nothing' : `${option.club}, ${option.swing},`} can be played from ${choice.from.lie}`,
    );
  const shown = showStroke(plan.solution, choice.from, stroke);
  return {
    option: { club: stroke.option.club, swing: stroke.option.swing },
    spot: shown.spot,
    expectedStrokes: shown.strokes,
    costsMore: shown.strokes - choice.answer.strokes,
  };
}

/** What can be played from where a shot's ball lies, in the order of the player's bag. */
export function askOptions(open: OpenHole, shot: number): readonly Option[] {
  const { plan, player } = open;
  const { from } = choiceOf(open, shot);
  const { flag } = plan.solution.ground;
  return player.options
    .filter((option) => aimedAt(plan.solution, from, option, flag) !== undefined)
    .map(({ club, swing }) => ({ club, swing }));
}

function choiceOf({ plan }: OpenHole, shot: number) {
  const choice = plan.shots[shot]?.choice;
  if (choice === undefined) throw new RangeError(`there is no shot ${shot + 1} in this plan`);
  return choice;
}
