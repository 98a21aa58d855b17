import {
  DRIFT_M,
  finishWords,
  fromWords,
  goesForFlag,
  shotTitle,
  spotPlace,
  strokeWords,
  TIE_STROKES,
  type HoleDocument,
  type ShotDocument,
} from '@leeway/contract';
import {
  capital,
  cautionWords,
  lengthWords,
  optionWords,
  printedNumber,
  strokesWords,
  type Units,
  wholeLength,
  YARD_M,
} from '@leeway/engine';
import type { Behind, SpotAnswer } from './asks.ts';
import type { GreenAlong } from './plane/greenAlong.ts';
import { ballsWords, dateWords, SHELL } from './shell/words.ts';
import type { Open } from './state/open.ts';
import { isKept } from './state/own.ts';

/** The words of the Plan page. Nothing outside files of words may hold visible text; a test sees to that. */
export const WORDS = {
  plan: 'Plan',
  choices: 'Hole, player, units and light',
  hole: 'Hole',
  player: 'Player',
  ground: 'Course',
  chart: 'Chart',
  choice: 'The choice',
  shots: 'Shots',
  /** What may go on a phone stands apart. */
  expected: { wide: 'strokes ', words: 'expected' },
  todaysNumber: 'today’s number',
  plays: 'plays',
  finishes: 'Where it finishes, of 100 balls',
  costsMore: 'costs more',
  tie: 'a tie',
  again: 'Try again',
  plainer: 'Plainer, and a tie',
  howSure: 'How sure',
  seeShots: 'see the shots behind it',
  seeScores: 'chances of the score',
  playing: 'Playing the hole some thousand times.',
  noScores: 'Not known: the strokes before this shot are not told.',
  hideShots: 'put the shots away',
  fetching: 'Fetching the shots.',
  ballByBall: 'Ball by ball',
  ballColumns: { date: 'hit on', carry: 'carry', side: 'side', strike: 'strike' },
  mishit: 'mishit',
  goodStrike: 'good',
  noDate: 'no date',
  noSide: 'not measured',
  straight: 'straight',
  youFirst: 'You first',
  keep: 'Keep',
  wholeRound: 'Whole round',
  showAnswer: 'Show the answer',
  chooseHint: 'tap where a good strike should finish',
  moveFlag: 'Move the flag',
  moveSpot: 'Move the spot',
  flagBack: 'Flag as it was',
  giveUpSpot: 'Give up your spot',
  dragFlag: 'drag the flag or the spot, turn the arrow',
  tapFlag: 'Tap the place of the flag on the chart. Escape leaves it.',
  tapSpot: 'Tap the place of your spot on the chart. Escape leaves it.',
  lags: 'The choice for what has moved is being worked out.',
  flag: 'Flag',
  spot: 'Spot',
  more: 'Why, and what else',
  less: 'Back to the choice',
  caution: 'Look before you hit.',
  safety:
    'Nobody in range before you play; shout at once when a ball goes astray; off the course when lightning is about. Warm up, and stop at pain. The committee, its local rules and the Rules of Golf come first.',
  wind: 'Wind',
  windKnown: 'Forecast or felt?',
  knownNames: { forecast: 'forecast', felt: 'felt' },
  noShelf: 'The courses and players could not be had from the server. Load the page again.',
  nothing: 'Nothing of your own to plan yet.',
  nothingWhy: 'A plan needs a player and a course. A name is enough for the one, a length for the other.',
  toPlayers: 'Go to the players',
  toGround: 'Go to the ground',
  startClean: 'Start clean, with your own alone',
  madeUpBack: 'Bring the made-up course back',
} as const;

/** Whatever of the plan is not the coach's own. */
export const madeUpWords = ({ ground, player }: Open): string =>
  ground.kept === true ? '' : isKept(player) ? 'The course is made up.' : 'The course and its players are made up.';

/** "7 The Saltings, par 4", as the list of holes has it. */
export const holeOption = (h: { readonly hole: string; readonly name?: string; readonly par: number }): string =>
  `${h.hole}${h.name === undefined ? '' : ` ${h.name}`}, par ${h.par}`;

export const holeName = (h: { readonly hole: string; readonly name?: string }): string => h.name ?? `Hole ${h.hole}`;

export const holeAndPar = (h: { readonly hole: string; readonly par: number }): string =>
  `Hole ${h.hole}, par ${h.par}`;

/** The page's heading, and its title in the browser. */
export const headingWords = (plan: HoleDocument, units: Units): string =>
  `Plan of hole ${plan.hole}${plan.name === undefined ? '' : `, ${plan.name}`}: par ${plan.par}${plan.parGuessed === true ? ' from its length' : ''}, ${lengthWords(plan.lengthM, units)}, ${strokesWords(plan.expectedStrokes)} strokes expected`;

export const documentTitle = (h: { readonly hole: string; readonly name?: string }): string =>
  `${holeName(h)}, hole ${h.hole} · ${SHELL.name}`;

/** "par 3, tee shot", at the right of the phone's title. */
export const phoneSubtitle = (par: number, index: number): string => `par ${par}, ${shotTitle(index).toLowerCase()}`;

/** The heading while the answer is hidden. */
export const plainHeading = (plan: HoleDocument, units: Units): string =>
  `Plan of hole ${plan.hole}${plan.name === undefined ? '' : `, ${plan.name}`}: par ${plan.par}, ${lengthWords(plan.lengthM, units)}`;

export const holeBefore = (hole: string): string => `Hole before: ${hole}`;
export const holeAfter = (hole: string): string => `Next hole: ${hole}`;
export const PHONE_EDGE = { holeBefore: 'hole before', nextHole: 'next hole' } as const;

export const workingWords = (hole: string, player: string): string =>
  `Working hole ${hole} backwards from the flag for ${player}.`;

export const drawingWords = (index: number): string => `Drawing the sheet of the ${shotTitle(index).toLowerCase()}.`;

/** A difference below this is a tie. */
export const TIED = TIE_STROKES;

/** A fault in one line, with what was kept. */
export const faultWords = (message: string, kept: boolean): string =>
  `${capital(message.replace(/[.\s]+$/, ''))}. ${kept ? 'The plan on this page is kept as it last stood.' : 'Nothing was changed; try again, or choose another hole or player.'}`;

export { shotTitle };

/** The tab of a shot: "Tee shot". */
export const clubWordsOf = (shot: ShotDocument): { readonly club: string; readonly swing: string } => {
  const [club = '', ...swing] = capital(optionWords(shot.option)).split(', ');
  return { club, swing: swing.join(', ') };
};

/** "Spot 6 yd left of the flag and 7 yd short of it." */
export const spotLine = (shot: ShotDocument, units: Units): string => `Spot ${spotPlace(shot, units)}.`;

/** Nothing where no feature stands near the line. */
export const startWords = ({ startLine }: ShotDocument): string =>
  startLine === undefined ? '' : `Start line: ${startLine}.`;

/** "Start it 4 yd left; good strikes come back."; nothing where it starts at its spot. */
export function driftWords(shot: ShotDocument, units: Units): string {
  const driftM = shot.aim.rightOfFlagM - shot.spot.rightOfFlagM;
  if (Math.abs(driftM) < DRIFT_M) return '';
  const by = lengthWords(Math.abs(driftM), units);
  return `Start it ${by} ${driftM < 0 ? 'left' : 'right'}; good strikes come back.`;
}

/** The plain line's expected strokes and what they are of. */
export function plainLine(
  shot: ShotDocument,
): { readonly wide: string; readonly words: string; readonly strokes: string } | undefined {
  const plain = shot.atFlag ?? shot.middleOfFairway;
  if (plain === undefined) return undefined;
  const where = shot.atFlag === undefined ? 'middle of the fairway' : 'at the flag';
  const other = optionWords(plain.option) === optionWords(shot.option) ? '' : `, ${optionWords(plain.option)}`;
  return {
    wide: shot.atFlag === undefined ? '' : 'straight ',
    words: `${where}${other}`,
    strokes: strokesWords(plain.expectedStrokes),
  };
}

/** A sentence cut where its figures are, so that they can stand in the sans: words and figures by turns. */
export type Figured = readonly { readonly words?: string; readonly figure?: string }[];

export function landsWords(shot: ShotDocument, units: Units): Figured {
  const parts: { words?: string; figure?: string }[] = [
    { words: shot.lie === 'tee' ? 'Carries ' : 'Lands ' },
    { figure: `${wholeLength(shot.landsM, units)}` },
    { words: ', finishes ' },
    { figure: `${wholeLength(shot.finishesM, units)}` },
  ];
  if (goesForFlag(shot)) return [...parts, { words: ` ${units}.` }];
  const leavesM = Math.hypot(shot.spot.beyondFlagM, shot.spot.rightOfFlagM);
  return [...parts, { words: ', leaves ' }, { figure: `${wholeLength(leavesM, units)}` }, { words: ` ${units}.` }];
}

export function flagWords(shot: ShotDocument, green: GreenAlong | undefined, units: Units): Figured {
  const flag = { figure: `${wholeLength(shot.toFlagM, units)}` };
  if (green === undefined || !goesForFlag(shot)) return [{ words: 'The flag is ' }, flag, { words: ` ${units}.` }];
  const [front, back] = [green.frontM, green.backM].map((m) => `${wholeLength(m, units)}`);
  return [
    { words: 'The flag is ' },
    flag,
    { words: ': front ' },
    { figure: front ?? '' },
    { words: ', back ' },
    { figure: back ?? '' },
    { words: '.' },
  ];
}

/** "From the rough, after a drop."; nothing from tee or fairway. */
export function lieWords(shot: ShotDocument): string {
  const from = shot.lie === 'fairway' ? '' : fromWords(shot.lie).replace(/^, /, '');
  const parts = [from, shot.dropped === true ? 'after a drop' : ''].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${capital(parts.join(', '))}.`;
}

/** One line of the sum: its words, its figure with a true sign, between what it lies, and whether it is nought. */
export interface SumLine {
  readonly words: string;
  readonly figure: string;
  readonly between?: string;
  readonly nought: boolean;
}

/** Today's number as a caddie writes it: the parts add up as printed. */
export function sumOf(
  { todaysNumber: n, lie }: ShotDocument,
  units: Units,
  windName = 'wind',
): { readonly lines: readonly SumLine[]; readonly total: string } {
  const printed = printedNumber(n, units === 'yd' ? YARD_M : 1);
  const about = n.doubt?.wind;
  const lines = [
    { words: n.windM === 0 ? 'calm' : windName, whole: printed.wind },
    { words: n.slopeM === 0 ? 'level' : n.slopeM > 0 ? 'up' : 'down', whole: printed.slope },
    { words: 'air', whole: printed.air },
    { words: 'lie', whole: printed.lie },
  ].map(({ words, whole }) => ({
    words,
    figure: signed(whole),
    ...(words === windName && about !== undefined
      ? { between: `${signed(wholeLength(about.lo80, units))} to ${signed(wholeLength(about.hi80, units))}` }
      : {}),
    nought: whole === 0,
  }));
  return {
    lines: [{ words: lie === 'tee' ? 'carries' : 'lands', figure: `${printed.lands}`, nought: false }, ...lines],
    total: `${printed.plays}`,
  };
}

const signed = (n: number): string => (n === 0 ? '0' : `${n < 0 ? '−' : '+'}${Math.abs(n)}`);

/** Where a hundred balls finish, with the ground that each place is drawn as. */
export interface Finish {
  readonly place: string;
  readonly ground: Ground;
  readonly balls: number;
}
export type Ground = 'green' | 'fairway' | 'rough' | 'sand' | 'trees' | 'water' | 'out' | 'unmapped';

const GROUNDS: { readonly [place: string]: Ground } = {
  green: 'green',
  fairway: 'fairway',
  rough: 'rough',
  sand: 'sand',
  trees: 'trees',
  'penalty area': 'water',
  'out of bounds': 'out',
};

export const finishesOf = (shot: ShotDocument): readonly Finish[] =>
  finishWords(shot.chances).map(([place, balls]) => ({ place, balls, ground: GROUNDS[place] ?? 'unmapped' }));

export const whyHeading = (shot: ShotDocument): string => {
  if (shot.atFlag !== undefined) return 'Why not at the flag';
  return shot.middleOfFairway === undefined ? 'Why' : 'Why not the middle of the fairway';
};

/** No line ends after the 8- of an 8-iron. */
export const unbroken = (words: string): string => words.replace(/(\d-)(?=[a-z])/g, '$1\u2060');

export const reasonsOf = (shot: ShotDocument): readonly string[] => shot.reasons.map(unbroken);

export const othersHeading = (count: number): string => (count > 1 ? 'Second and third choice' : 'Second choice');

/** Another stroke: what it is, why it lost, and what it costs more. */
export interface Other {
  readonly what: string;
  readonly why: string;
  readonly costs: string;
}

export const othersOf = (shot: ShotDocument, units: Units): readonly Other[] =>
  shot.alternatives.map((other) => {
    const tie = other.costsMore < TIE_STROKES;
    const costs = tie ? WORDS.tie : strokesWords(other.costsMore);
    return { what: strokeWords(other, shot, units), why: tie ? '' : other.why, costs };
  });

export const simplestOf = (shot: ShotDocument, units: Units): string | undefined =>
  shot.simplest === undefined
    ? undefined
    : `${WORDS.plainer}: ${strokeWords(shot.simplest, shot, units)}, ${strokesWords(shot.simplest.expectedStrokes)}.`;

export const endsEarlyWords = (why: string): string => `The plan ends here: ${why}.`;

export function cautionsOf(shot: ShotDocument): string | undefined {
  if (shot.flagged === undefined) return undefined;
  const names = shot.flagged.map(({ kind, name }) => cautionWords(name === undefined ? { kind } : { kind, name }));
  return `Balls of this pattern reach ${[...new Set(names)].join(', ')}. Be sure that nobody is there before you play.`;
}

/** An option that finishes this far from the spot it was asked for says so. */
const APART_M = 1;

/** Whose spot it is and what is played to it: "Your spot: 9-iron, full, ends 6 yd past it." */
export function ownOptionWords(cost: SpotAnswer | undefined, pastM: number, units: Units): string {
  if (cost === undefined) return 'Your spot: being worked out.';
  const finishes = `, ends ${lengthWords(Math.abs(pastM), units)} ${pastM < 0 ? 'short of' : 'past'} it`;
  return `Your spot: ${optionWords(cost.option)}${Math.abs(pastM) < APART_M ? '' : finishes}.`;
}

/** "0.06 more", "0.01 more, a tie". */
export const ownCostWords = ({ costsMore }: SpotAnswer): string =>
  `${strokesWords(Math.max(0, costsMore))} more${costsMore < TIE_STROKES ? `, ${WORDS.tie}` : ''}`;

/** A place beside where it was: "3 yd left of where it was and 2 yd on". */
export function movedWords(rightM: number, onM: number, units: Units): string {
  const across = wholeLength(rightM, units);
  const along = wholeLength(onM, units);
  const side = across === 0 ? '' : `${Math.abs(across)} ${units} ${across < 0 ? 'left' : 'right'} of where it was`;
  const depth = along === 0 ? '' : `${Math.abs(along)} ${units} ${along < 0 ? 'back' : 'on'}`;
  if (side !== '') return depth === '' ? side : `${side} and ${depth}`;
  return depth === '' ? 'where it was' : `${depth} from where it was`;
}

export const handleHelp = (units: Units): string =>
  `Arrow keys move it by 1 ${units === 'yd' ? 'yard, with shift by 1 foot' : 'metre, with shift by 0.25 metre'}; Escape puts it back.`;

/** What is said aloud once a moved flag or spot has settled. */
export const summaryWords = (shot: ShotDocument, units: Units, own: SpotAnswer | undefined): string =>
  own === undefined
    ? `${capital(optionWords(shot.option))}. ${spotLine(shot, units)} ${strokesWords(shot.expectedStrokes)} ${WORDS.expected.wide}${WORDS.expected.words}.`
    : `Your spot, ${optionWords(own.option)}: ${ownCostWords(own)}.`;

/** Balls behind a pattern: how many, when, how far; the drawing says no more. */
export function behindWords(balls: Behind['balls'], units: Units): string {
  if (balls.length === 0) return 'No balls of this club and swing are kept.';
  const good = balls.filter((b) => !b.mishit);
  const carries = good.map((b) => b.carryM).sort((a, b) => a - b);
  const at = (share: number): number => carries[Math.round(share * (carries.length - 1))] ?? 0;
  const dates = balls.flatMap((b) => (b.date === undefined ? [] : [b.date])).sort();
  const [first, last] = [dates[0], dates.at(-1)];
  const when =
    first === undefined || last === undefined
      ? ''
      : first === last
        ? ` hit on ${dateWords(first)}`
        : ` hit from ${dateWords(first)} to ${dateWords(last)}`;
  const mishits = balls.length - good.length;
  const spread =
    good.length < 4
      ? ''
      : ` Half of the good strikes carry ${wholeLength(at(0.25), units)} to ${wholeLength(at(0.75), units)} ${units}, the middle one ${wholeLength(at(0.5), units)}.`;
  const missed = mishits === 0 ? ' No mishits among them.' : ` ${mishits} of them mishit, drawn as rings.`;
  return `${capital(ballsWords(balls.length))}${when}.${spread}${missed}`;
}

/** "4 yd left", "straight". */
export function sideWords(sideM: number | undefined, units: Units): string {
  if (sideM === undefined) return WORDS.noSide;
  const whole = wholeLength(sideM, units);
  return whole === 0 ? WORDS.straight : `${Math.abs(whole)} ${units} ${whole < 0 ? 'left' : 'right'}`;
}

export { dateWords, strokesWords, wholeLength };
