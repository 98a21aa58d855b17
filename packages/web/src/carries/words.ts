import type { Approach, Fault, LadderData, ShotColumn, ShotFile, Standing } from '@leeway/contract';
import { capital, type Difference, optionWords, type Units, wholeLength } from '@leeway/engine';
import { ballsWords, dateWords } from '../shell/words.ts';
import type { BadApproach, End } from './approachTyped.ts';
import type { Rung } from './rungs.ts';
import type { Change, DayCount } from './seen.ts';

/** The words of the Carries page. */
export const CARRIES = {
  title: 'The ladder of carries',
  lead: (units: Units): string =>
    `Carry in ${units === 'yd' ? 'yards' : 'metres'}, from level ground on a calm day at 20 °C.`,
  columns: {
    club: 'club',
    carry: 'carry',
    sure: 'sure to',
    eight: '8 in 10 carry',
    mishits: 'mishits in 100',
    balls: 'balls',
    claimed: 'claimed',
    needed: 'still needed',
  },
  table: 'Carries, the longest first',
  chart: 'The ladder, drawn',
  believed: 'no balls: usual for the other clubs',
  notFitted: 'middle of the balls, not yet fitted',
  claimedOnly: 'as claimed, no balls',
  gaps: 'Gaps in the ladder',
  noGaps: 'No gaps between the clubs that were hit.',
  neededNote: 'Still needed: balls until the carry is sure to that much.',
  none: 'No carries yet.',
  noneWhy:
    'Drop a file of shots, one or many, or type the carries you know. Ten balls make a first pattern; until then the plan leans on the one usual for the handicap, and says so.',
  nobody: 'Whose carries?',
  nobodyWhy: 'Choose a player first, or add one.',
  toPlayers: 'Go to the players',
  fetching: 'Fetching the balls.',
  fit: 'Fit the new balls',
  fitting: 'Fitting the patterns.',
  fitFailed: 'The balls could not be fitted. They are kept; try again, or look whether their clubs carry.',
  fitted: 'Fitted.',
  plan: 'Plan with these',
  above: 'From above. Dots are good strikes, rings mishits; each line holds that many balls in 100.',
  aboveUnfitted: 'From above, as they were measured; not fitted yet.',
  aboveTwo: 'From above. Dots and rings are the later day, crosses the earlier; the lines are of all balls.',
  before: 'Before',
  after: 'After',
  noDay: 'choose a day',
  asMeasured: 'As measured on each day, not moved to one air and wind.',
  hit: 'Ball by ball',
  hitWhy: 'On the range, with a tablet or a phone: keyed as they land, kept at once.',
  hitSession: 'Hit a session',
  files: 'From files',
  drop: 'Drop files of shots here',
  pick: 'or choose them',
  dropWhy: 'Tables as CSV or TSV, with any headings. You see how they are read before anything is kept.',
  reading: 'Reading the file.',
  day: 'Hit on, where no row says',
  unitsAsked: 'Lengths, where no heading says',
  unitsOf: { yd: 'yards', m: 'metres' },
  whose: 'Whose shots',
  whoseAsk: 'choose one',
  heading: 'In the file',
  means: 'Read as',
  unit: 'Unit',
  unread: 'not read',
  unknown: 'not known: choose, or leave it unread',
  saysUnit: 'given by the file',
  proposedUnit: 'proposed: confirm above',
  noUnit: '',
  asRead: 'The first rows, as they stand and as they were read',
  rowColumns: { line: 'line', club: 'club', carry: 'carry', side: 'side' },
  faults: 'Row by row',
  noFaults: 'Every row was read.',
  keep: 'Keep them',
  leave: 'Leave the file',
  cannotKeep: 'Nothing can be kept of it as it is read now.',
  remembered: 'Read as the last file with these headings was.',
  typed: 'From memory',
  typedWhy: 'What the player says a good strike carries. Balls, once they are hit, count for more.',
  typedColumns: { club: 'club', full: 'full', 'three-quarter': 'three-quarter', half: 'half' },
  typedTable: 'Carries from memory',
  moreClubs: 'One more club',
  keepTyped: 'Keep these carries',
  badCarry: (units: Units): string => `A carry lies between 1 and 490 ${units}.`,
  kept: 'Kept.',
  undo: 'Undo',
  marks: {
    title: 'Pitch marks',
    why: 'From the course: where the mark of an approach was found, or on which side of the green it came down. The misses tell as much as the marks.',
    club: 'Hit with',
    noClub: 'choose a club',
    flag: 'To the flag',
    front: 'Green begins at',
    back: 'Green ends at',
    width: 'Green is wide',
    end: 'Found',
    ends: {
      mark: 'a mark',
      short: 'no mark: short',
      long: 'no mark: long',
      left: 'no mark: left',
      right: 'no mark: right',
      away: 'no mark: sand, side unknown',
    } satisfies { readonly [E in End]: string },
    beyond: 'Mark from the flag',
    depth: 'Past or short',
    depths: { past: 'past', short: 'short' },
    across: 'Mark to the side',
    hand: 'Left or right',
    hands: { left: 'left', right: 'right' },
    bad: {
      club: 'Choose the club.',
      flag: 'From 1 to 490.',
      green: 'It begins before the flag, ends after it, and has a width.',
      mark: 'The mark lies on the green.',
    } satisfies { readonly [B in BadApproach]: string },
    keep: 'Keep it',
    takenBack: 'The approach is taken back.',
  },
  sessions: 'Sessions',
  noSessions: 'No sessions yet.',
  takeBack: 'take back',
  takenBack: 'The session and its balls are taken back.',
} as const;

/** Names of clubs to begin a list of carries with; each can be written over. */
export const USUAL_CLUBS = ['driver', '3-wood', '5-hybrid', '6-iron', '7-iron', '8-iron', '9-iron', 'PW', '54°'];

export const COLUMN_WORDS: { readonly [C in ShotColumn]: string } = {
  club: 'club',
  carry: 'carry, straight from the ball',
  'down the line': 'carry, down the line',
  side: 'side of the line',
  swing: 'length of swing',
  total: 'total',
  'ball speed': 'ball speed',
  launch: 'launch angle',
  direction: 'start direction',
  spin: 'spin',
  axis: 'tilt of the spin',
  apex: 'height of flight',
  descent: 'angle of descent',
  strike: 'strike',
  'height on face': 'height on the face',
  'tee height': 'tee height',
  'low point': 'low point',
  ball: 'kind of ball',
  player: 'player',
  date: 'date',
  temperature: 'temperature',
  altitude: 'altitude',
  'wind speed': 'wind speed',
  'wind from': 'wind from',
  bearing: 'bearing of the line',
  slope: 'slope',
};

export const clubWords = (rung: Pick<Rung, 'club' | 'swing'>): string => capital(optionWords(rung));

export const sureWords = (seM: number | undefined, units: Units): string =>
  seM === undefined ? '' : `±${Math.max(1, wholeLength(1.2816 * seM, units))}`;

export const neededWords = ({ needed }: Rung, units: Units): string =>
  needed === undefined ? '' : needed.balls === 0 ? 'sure' : `${needed.balls} to ±${wholeLength(needed.withinM, units)}`;

export const gapWords = (fromM: number, toM: number, units: Units): string =>
  `Nothing between ${wholeLength(fromM, units)} and ${wholeLength(toM, units)} ${units}`;

/** "450 balls, last on 9 March 2026", beside the player's name. */
export function whoseWords(balls: readonly { readonly date?: string }[]): string {
  const last = balls.reduce((latest, { date = '' }) => (date > latest ? date : latest), '');
  return `${ballsWords(balls.length)}${last === '' ? '' : `, last on ${dateWords(last)}`}`;
}

/** "46 balls in 1 session: 12 May 2026". */
export function foundWords({ sessions }: ShotFile): string {
  const balls = sessions.reduce((sum, { shots }) => sum + shots, 0);
  const days = sessions.map(({ date }) => dateWords(date)).join(', ');
  return `${ballsWords(balls)} in ${sessions.length} session${sessions.length === 1 ? '' : 's'}: ${days}`;
}

export const keptWords = ({ kept, sessions }: ShotFile): string =>
  kept === undefined
    ? ''
    : kept.already
      ? 'This file was kept before; nothing changed.'
      : `Kept ${ballsWords(kept.shots)} in ${sessions.length} session${sessions.length === 1 ? '' : 's'}.`;

/** "Line 14: found 15o, expected a number; the row is left out". */
export function rowWords({ line, at, found, expected, done }: Fault): string {
  const place = line === undefined ? (at ?? '') : `line ${line}`;
  return `${place === '' ? '' : `${capital(place)}: `}found ${found}, expected ${expected.replace(/,? or --.*$/, '')}${done === undefined ? '' : `; ${done}`}`;
}

/** Beside the ladder of a player who is sore: nothing is to be measured at full effort. */
export const sparedWords = (since: string): string =>
  `Not today: sore or hurt since ${dateWords(since)}. No full efforts, so no session of full swings; stop at pain.`;

export const sessionWords = (date: string, balls: number): string => `${dateWords(date)}, ${ballsWords(balls)}`;
export const takesBackWords = (date: string): string => `Take back the session of ${dateWords(date)}`;
export const meansWords = (heading: string): string => `Meaning of ${heading}`;
export const carryOf = (club: string, swing: string): string => `Carry of ${club}, ${swing}`;
export const clubNumber = (i: number): string => `Club ${i + 1}`;
export const fittingWords = ({ state }: Standing): string =>
  state === 'waiting' ? 'Waiting for the work before it.' : CARRIES.fitting;

/** "12 approaches, 7 marks". */
export function approachesWords(approaches: readonly { readonly body: Approach }[]): string {
  const marks = approaches.filter(({ body }) => 'beyondFlagM' in body.found).length;
  const n = approaches.length;
  if (n === 0) return '';
  return `${n} approach${n === 1 ? '' : 'es'}, ${marks} mark${marks === 1 ? '' : 's'}`;
}

type Entry = NonNullable<NonNullable<LadderData['fitted']>['ladder']>['entries'][number];
/** Half of the middle eight tenths of a normal, in standard deviations. */
const EIGHT_TENTHS = 1.2816;

/** "157 yd, sure to ±2 · 8 in 10 carry 146 · good strikes within 18 deep and 20 wide · all balls 151 · 46 balls, 4 mishit". */
export function figuresLine(
  rung: Rung,
  entry: Entry | undefined,
  balls: number,
  mishits: number,
  units: Units,
): string {
  const whole = (m: number): number => wholeLength(m, units);
  const judged = entry !== undefined || mishits > 0;
  const hit = `${ballsWords(balls)}${judged ? `, ${mishits} mishit` : ''}`;
  if (entry === undefined) return `${whole(rung.carryM)} ${units}, not yet fitted · ${hit}`;
  const wideM = 2 * EIGHT_TENTHS * entry.carryM.mean * Math.sin((entry.directionSdDeg.mean * Math.PI) / 180);
  const deepM = 2 * EIGHT_TENTHS * entry.sdAlongM.mean;
  return [
    `${whole(entry.carryM.mean)} ${units}, sure to ${sureWords(entry.carryM.se, units)}`,
    `8 in 10 carry ${whole(entry.eightInTenCarryM)}`,
    `8 in 10 good strikes within ${whole(deepM)} deep, ${whole(wideM)} wide`,
    `all balls ${whole(entry.allBallsMeanM)}`,
    hit,
  ].join(' · ');
}

export const sidelessWords = (n: number): string =>
  `${ballsWords(n)} without a side ${n === 1 ? 'is' : 'are'} not drawn.`;

/** What changed between two days: the two counts, then carry and line. */
export function changeWords({ before, after, carryM, sideM }: Change, units: Units): readonly string[] {
  const day = ({ date, balls, mishits, goodCarryM }: DayCount): string => {
    const good = goodCarryM === undefined ? '' : `, good strikes ${wholeLength(goodCarryM, units)} ${units}`;
    return `${dateWords(date)}: ${ballsWords(balls)}, ${mishits} mishit${good}.`;
  };
  const counts = [day(before), day(after)];
  if (carryM === undefined) return [...counts, TOO_FEW];
  const lines = [...counts, `Carry: ${differenceWords(carryM, ['longer', 'shorter'], units)}`];
  return sideM === undefined
    ? lines
    : [...lines, `Line: ${differenceWords(sideM, ['further right', 'further left'], units)}`];
}

const TOO_FEW = 'Too few good strikes on one of the days to tell a change from chance: four on each are the least.';

function differenceWords(
  { mean, lo80, hi80, beyondChance }: Difference,
  [more, less]: readonly [string, string],
  units: Units,
): string {
  const sign = mean < 0 ? -1 : 1;
  const [from, to] = (sign > 0 ? [lo80, hi80] : [-hi80, -lo80]).map((m) => wholeLength(m, units));
  const by = wholeLength(Math.abs(mean), units);
  const figure = (n: number): string => String(n).replace('-', '−');
  const what = by === 0 ? 'as before' : `${by} ${units} ${sign > 0 ? more : less}`;
  return `${what}, four times in five from ${figure(from ?? 0)} to ${figure(to ?? 0)}. ${beyondChance ? 'More than chance.' : 'May be chance.'}`;
}
