import type { Standing } from '@leeway/contract';
import { capital, optionWords, strokesWords } from '@leeway/engine';
import { dateWords } from '../shell/words.ts';
import type { RowName } from './account.ts';
import type { KeptLedger } from './kept.ts';
import { type FinishKey, type SideKey, type TypedHole } from './typed.ts';

/** The words of the Ledger page. */
export const LEDGER = {
  title: 'The ledger',
  none: 'No rounds yet.',
  noneWhy: 'Enter one from a paper card: for each stroke one key, for where it finished.',
  nobody: 'Whose rounds?',
  nobodyWhy: 'Choose a player first, or add one.',
  toPlayers: 'Go to the players',
  noCourse: 'A round is played on a course that is kept. Bring one in on the Ground page first.',
  toGround: 'Go to the ground',
  enter: 'Enter a round',
  leave: 'Leave it',
  keep: 'Keep the round',
  kept: 'Kept. The account is being made.',
  failed: 'The round could not be accounted for. It is kept; look whether every stroke can be placed.',
  account: 'Account for it',
  again: 'Account again',
  accounting: 'Solving the holes.',
  notYet: 'This round has no account yet.',
  fetching: 'Fetching the rounds.',
  rounds: 'Rounds',
  date: 'Played on',
  course: 'Course',
  lead: 'One key for where each stroke finished, then the number of putts. A hole of two strokes and two putts is f g 2; the next hole follows by itself.',
  finishKeys: 'Finished',
  sideKeys: 'After it, if you wish',
  clubKeys: 'Before it, if not the guess',
  guess:
    'A club that is not typed is taken as the longest from the tee, else as the one that reaches; places as the nearest such ground. Distances of putts are guesses too.',
  hole: (hole: string): string => `Hole ${hole}`,
  par: (par: number): string => `par ${par}`,
  total: 'Total',
  strip: 'The round, hole by hole',
  table: 'The account, in strokes',
  lost: 'lost',
  before: (n: number): string => (n === 1 ? 'the other round' : `last ${n} rounds`),
  byChoice: 'By choice',
  usual: 'Against the usual',
  usualWhy: 'a day’s luck; averages nought',
  apart: 'printed apart: not added to the choice',
  foot: 'Slant hatch: more than chance would bring. Broken lines: may be chance. Whiskers: four times in five.',
  aims: 'No aims were noted: each is taken as half at the best spot, half down the plain line, so the spot is the least sure.',
  comes: 'What it comes to',
  habits: 'Habits of execution',
  habitsLead: (index: string): string => `In strokes a round, against the ${index}. A minus is better than usual.`,
  unmeasured: (parts: string): string => `Never measured, so nothing to compare: ${parts}.`,
  expected: 'Predicted and actual',
  shots: 'The shots behind it',
  noShots: 'No stroke of it cost as much as 0.02.',
  seeShots: 'See the shots of',
  close: 'Close',
  shotColumns: { hole: 'hole', shot: 'stroke', with: 'with', lost: 'lost' },
} as const;

export const ROW_WORDS: { readonly [R in RowName]: readonly [name: string, means: string] } = {
  spot: ['Spot', 'where it was aimed'],
  number: ['Number', 'the distance played'],
  swing: ['Swing', 'club and length of swing'],
  risk: ['Risk', 'water, bounds and trees taken on'],
  strike: ['Strike', 'fat, thin, off the middle'],
  direction: ['Direction', 'left and right'],
  length: ['Length', 'short and long'],
  luck: ['Luck', 'bounce and lie'],
  shortGame: ['Short game', 'inside 40 yd'],
  putting: ['Putting', ''],
};

export const FINISH_WORDS: { readonly [K in FinishKey]: string } = {
  f: 'fairway',
  g: 'green',
  r: 'rough',
  s: 'sand',
  t: 'trees',
  w: 'water',
  o: 'out',
  h: 'holed',
};

export const SIDE_WORDS: { readonly [K in SideKey]: string } = { ',': 'left', '.': 'right', '-': 'short', '=': 'long' };

const MINUS = '\u2212';

/** Strokes to one decimal, a gain with a true minus. */
export function tenths(strokes: number): string {
  const words = Math.abs(strokes).toFixed(1);
  return strokes < 0 && Number(words) > 0 ? `${MINUS}${words}` : words;
}

export const roundWords = (course: string, date: string): string => `${course}, ${dateWords(date)}`;
export const playedWords = (score: number, par: number, holes: number): string =>
  `played ${score}, par ${par}${holes === 18 ? '' : `, ${holes} ${holes === 1 ? 'hole' : 'holes'}`}`;
export const savedWords = (score: number, saved: string): readonly [string, string, string] => [
  `Of ${score} strokes, `,
  saved,
  ' were there to be saved by choosing better.',
];

export const countWords = ({ fairways, greens, upAndDown, putts, penalties }: KeptLedger['rounds'][number]['counts']) =>
  [
    ['fairways', `${fairways[0]}/${fairways[1]}`],
    ['greens', `${greens[0]}/${greens[1]}`],
    ['up and down', `${upAndDown[0]}/${upAndDown[1]}`],
    ['putts', `${putts}`],
    ['penalties', `${penalties}`],
  ] as const;

export const betweenWords = (lo: number, hi: number): string => `${tenths(lo)} to ${tenths(hi)}, four times in five`;

export const barWords = (row: RowName, mean: number, lo: number, hi: number): string =>
  `${ROW_WORDS[row][0]}: ${tenths(mean)} lost, ${betweenWords(lo, hi)}`;

export const holeWords = (hole: string, score: number, lost: number): string =>
  `Hole ${hole}: ${score} strokes${lost >= 0.05 ? `, ${tenths(lost)} lost by choice` : ''}`;

export const accountingWords = ({ done, total }: Standing): string =>
  total === 0 ? LEDGER.accounting : `${LEDGER.accounting} ${Math.round((100 * done) / total)} in 100 done.`;

/** What was typed, said back: "2 strokes to the green, 2 putts". */
export function typedWords(
  { strokes, putts, whole, wrong }: TypedHole,
  clubs: readonly (string | undefined)[],
): string {
  if (wrong !== undefined) return `“${wrong}” means nothing here`;
  const said = strokes.map(({ to, side }, i) => {
    const club = clubs[i];
    return `${club === undefined ? '' : `${club} `}${FINISH_WORDS[to]}${side === undefined ? '' : ` ${side}`}`;
  });
  const last = putts === 0 ? [] : [`${putts} ${putts === 1 ? 'putt' : 'putts'}`];
  return `${[...said, ...last].join(', ')}${whole || strokes.length === 0 ? '' : ' …'}`;
}

export const shotWith = (shot: KeptLedger['shots'][number]): string =>
  shot.club === undefined ? shot.part : capital(optionWords({ club: shot.club, swing: shot.swing ?? 'full' }));

/** The dearest choices in words, dearest first, and what the day did. */
export function comesTo(ledger: KeptLedger, choice: number, usual: number): readonly (readonly [string, string])[] {
  const WHAT: { readonly [habit: string]: string } = {
    spot: 'The spot cost most.',
    number: 'The number cost most.',
    swing: 'The length of swing cost most.',
    risk: 'Risk cost most.',
  };
  const [first] = ledger.habits.filter(
    ({ habit, strokesPerRound }) => habit in WHAT && (strokesPerRound.mean * ledger.holes.length) / 18 >= 0.05,
  );
  const where = (first?.examples ?? [])
    .map((e) => `hole ${e.hole}, stroke ${e.shot}: ${strokesWords(e.strokes)}`)
    .join('; ');
  const lines: (readonly [string, string])[] = [];
  if (first === undefined) lines.push(['Choosing cost next to nothing.', `${tenths(choice)} in all.`]);
  else
    lines.push([
      WHAT[first.habit] ?? '',
      `${tenths((first.strokesPerRound.mean * ledger.holes.length) / 18)} of the ${tenths(choice)}: ${where}.${first.shown ? '' : ' One round does not show it as a habit yet.'}`,
    ]);
  const strike = ledger.habits.find(
    ({ habit, shown }) => ['strike', 'direction', 'length', 'shortGame', 'putting'].includes(habit) && shown,
  );
  if (strike !== undefined)
    lines.push([
      `${ROW_WORDS[strike.habit as RowName][0]} is the dearest habit of execution.`,
      `${tenths(strike.strokesPerRound.mean)} a round against the ${strike.against}.`,
    ]);
  lines.push([
    usual >= 0 ? `The other ${tenths(usual)} was the day.` : `The day gave back ${tenths(-usual)}.`,
    'Against these patterns that averages nought: nothing to mend from one round.',
  ]);
  return lines;
}

export function predictedWords(ledger: KeptLedger): string {
  const [round] = ledger.rounds;
  if (round === undefined) return '';
  const { mean, lo80, hi80, chance } = round.predicted;
  return `Choosing best, these patterns take ${mean.toFixed(1)}, ${lo80} to ${hi80} four times in five; ${round.score} or fewer comes ${Math.max(1, Math.round(100 * chance))} times in 100.`;
}

export function finishesWords({ finishes }: KeptLedger): string {
  if (finishes === undefined) return '';
  const { shots, short } = finishes;
  const inHundred = (x: number): string => `${Math.round(100 * x)} in 100`;
  return `Of ${shots} long shots with a noted aim ${inHundred(short.share)} finished short of the spot; the patterns predict ${inHundred(short.predicted)}.`;
}
