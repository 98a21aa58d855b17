import { fromWords, type KeptPlan, type ShotDocument } from '@leeway/contract';
import {
  bearingRad,
  distanceM,
  lengthWords,
  offsetOf,
  optionWords,
  outWords,
  type PlanePoint,
  spotWords,
  strokesWords,
  type Units,
} from '@leeway/engine';
import { windSpeed } from '../day/words.ts';
import { dateWords } from '../shell/words.ts';
import { TIED, unbroken } from '../words.ts';

/** The words of choosing first, and of keeping a plan or a choice of one's own. */
export const FIRST = {
  heading: 'You first',
  lead: 'Which club and swing, and where should a good strike finish? Choose both, then see what the plan would do and what yours costs beside it.',
  club: 'Club and swing',
  noClub: 'choose',
  noSpot: 'Spot: tap its place on the chart, or move it there with the arrow keys.',
  show: 'Show the answer',
  leave: 'Show answers as they come',
  keeping: 'Keep',
  keepPlan: 'Keep this plan',
  keepOwn: 'Keep your choice',
  why: 'Why this one',
  needWhy: 'A line of reason, to be read again after the round.',
  kept: 'Kept, as it stands today.',
  keptHeading: 'Kept for this hole',
  none: 'Nothing is kept for this hole yet.',
  takeAway: 'take it away',
  sure: 'It cannot be had back. Take it away?',
  yes: 'Take it away',
  no: 'Leave it',
  gone: 'Taken away.',
  notOwn: 'Plans are kept for players of your own. These here are made up.',
  toPlayers: 'Go to the players',
  working: 'Being kept.',
} as const;

/** "143 yd to the flag, from the rough." */
export const toChoose = (shot: ShotDocument, units: Units): string =>
  `${lengthWords(shot.toFlagM, units)} to the flag${fromWords(shot.lie)}.`;

/** From further than this the spot is told by how far out it is. */
const NEAR_SHARE = 0.25;

/** "Your spot: 6 yd left of the flag and 7 yd short of it." */
export function ownPlaceWords(
  { ball, flag, at }: { readonly ball: PlanePoint; readonly flag: PlanePoint; readonly at: PlanePoint },
  units: Units,
): string {
  const { alongM, acrossM } = offsetOf(at, flag, bearingRad(ball, flag));
  const place = { beyondFlagM: alongM, rightOfFlagM: acrossM };
  const toFlagM = distanceM(ball, flag);
  const words = distanceM(at, flag) < NEAR_SHARE * toFlagM ? spotWords(place, units) : outWords(toFlagM, place, units);
  return `Your spot: ${words}.`;
}

/** What is kept, in one line: a choice with its cost and reason, a line of a round plan, or the plan's strokes. */
export function keptWords(plan: KeptPlan, hole: string, units: Units): string {
  const { own, lines, day } = plan;
  const wind = windSpeed(day.windMps, units);
  const on = `Kept on ${dateWords(plan.madeAt)}, ${wind === 'calm' ? wind : `wind ${wind}`}: `;
  if (own !== undefined && own.hole === hole) {
    const costs = own.costsMore < TIED ? 'a tie with the plan' : `${strokesWords(own.costsMore)} more than the plan`;
    return unbroken(`${on}${optionWords(own.option)}, ${costs}. “${own.reason}”`);
  }
  const line = lines?.find((l) => l.hole === hole)?.line;
  if (line !== undefined) return unbroken(`${on}${line}, in a round plan.`);
  const strokes = plan.holes.find((h) => h.hole === hole)?.expectedStrokes;
  return `${on}the plan${strokes === undefined ? '' : `, ${strokesWords(strokes)} strokes expected`}.`;
}

export const takesAway = (when: string): string => `${FIRST.takeAway}: kept on ${dateWords(when)}`;
