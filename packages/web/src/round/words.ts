import type { KeptPlan, PlanDocument } from '@leeway/contract';
import { lengthWords, type Units } from '@leeway/engine';
import { windSpeed } from '../day/words.ts';
import { ballsWords, dateWords } from '../shell/words.ts';

/** The words of the round plan. */
export const ROUND = {
  heading: 'Round plan',
  lead: 'Every hole for the day’s flags and wind, in one line each.',
  noShelf: 'The courses and players could not be had from the server. Load the page again.',
  course: 'Course',
  player: 'Player',
  date: 'For the day',
  wind: 'Wind',
  windFrom: 'blows from',
  windFromUnit: '° or SW',
  flagsHelp:
    'Flags: f, m or b for front, middle and back, with l or r for the side (bl); or paces on and in, 16,7R. Enter goes on to the next hole. Empty: the flag as the map has it.',
  plan: 'Plan the round',
  again: 'Plan it again',
  stop: 'Stop',
  keep: 'Keep this round',
  print: 'Print the sheet',
  columns: {
    hole: 'hole',
    par: 'par',
    length: 'long',
    flag: 'flag',
    line: 'plan',
    strokes: 'strokes',
    parOrBetter: 'par or better',
    doubleOrWorse: 'double or worse',
  },
  inHundred: 'in 100',
  round: 'Round',
  stale: 'Course, player, wind or flags have changed since; plan it again.',
  badFlag: 'not a flag: bl, m, 16,7R',
  badSpeed: 'a speed, such as 12',
  badFrom: 'degrees, such as 240, or SW',
  waits: 'waiting',
  working: 'being planned',
  kept: 'Kept, as it stands today.',
  keptHeading: 'Kept rounds',
  none: 'No round is kept for this player and course yet.',
  notOwn: 'Rounds are kept for players of your own. These here are made up.',
  toPlayers: 'Go to the players',
  open: 'open',
  close: 'Back to today’s',
  takeAway: 'take it away',
  sure: 'It cannot be had back. Take it away?',
  yes: 'Take it away',
  no: 'Leave it',
  gone: 'Taken away.',
  backToPlan: 'Hole by hole',
  care: 'Nobody in range before you play. The committee, its local rules and the Rules of Golf come first.',
} as const;

export const flagOf = (hole: string): string => `Flag on hole ${hole}`;
export const planOf = (hole: string): string => `Hole ${hole} on its own sheet`;

export const progressWords = (done: number, total: number): string => `${done} of ${total} holes planned.`;

/** "28 November 2026, wind 10 mph from 240°". */
export function dayOf(date: string, day: Pick<PlanDocument['day'], 'windMps' | 'windFromDeg'>, units: Units): string {
  const speed = windSpeed(day.windMps, units);
  return `${dateWords(date)}, ${speed === 'calm' ? 'calm' : `wind ${speed} from ${Math.round(day.windFromDeg ?? 0)}°`}`;
}

export const windUnit = (units: Units): string => (units === 'yd' ? 'mph' : 'm/s');

export const longWords = (lengthM: number | undefined, units: Units): string =>
  lengthM === undefined ? '' : lengthWords(lengthM, units);

/** A chance as balls in a hundred would be told: whole, and 1 at least when it is not nought. */
export const hundredth = (chance: number | undefined): string =>
  chance === undefined ? '' : `${chance > 0 ? Math.max(1, Math.round(100 * chance)) : 0}`;

/** "84.3 strokes expected, sure to ±1.2; leans on 12 balls at least". */
export function totalWords(round: NonNullable<PlanDocument['round']>): string {
  const { expectedStrokes, doubt, par } = round;
  const sure = doubt.se > 0 ? `, sure to ±${(doubt.hi80 - expectedStrokes).toFixed(1)} four times in five` : '';
  const balls = doubt.balls > 0 ? `; each shot leans on ${ballsWords(doubt.balls)} or more` : '';
  return `${expectedStrokes.toFixed(1)} strokes expected on a par of ${par}${sure}${balls}.`;
}

/** Of all holes together: "par or better on 7.4 of 18 holes, double or worse on 3.1". */
export function countsWords(
  scores: readonly { readonly parOrBetter: number; readonly doubleOrWorse: number }[],
): string {
  const sum = (of: (s: (typeof scores)[number]) => number): string => scores.reduce((n, s) => n + of(s), 0).toFixed(1);
  return `To be expected: par or better on ${sum((s) => s.parOrBetter)} of ${scores.length} holes, double or worse on ${sum((s) => s.doubleOrWorse)}.`;
}

export function keptOn({ madeAt, date, day, round }: KeptPlan, units: Units): string {
  const [kept, of] = [dateWords(madeAt), dayOf(date, day, units)];
  const when = of.startsWith(kept) ? of : `${kept} for ${of}`;
  return `Kept on ${when}${round === undefined ? '' : `: ${round.expectedStrokes.toFixed(1)} strokes expected`}.`;
}
