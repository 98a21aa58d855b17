import { capital, optionWords, type Units, wholeLength } from '@leeway/engine';
import { ballsWords } from '../shell/words.ts';
import type { Called, Option } from './calls.ts';
import type { HitBall, SetUp, WindFrom } from './log.ts';

/** The words of the Session page. */
export const SESSION = {
  title: 'A session',
  lead: 'Hit known clubs to known distances, ball by ball. Every ball counts, the poor ones too: they are half of what a plan is made from.',
  setUp: 'Before the first ball',
  again: 'How it is set up',
  target: 'Target line',
  surface: 'From',
  surfaces: { mat: 'a mat', turf: 'turf' } satisfies { readonly [S in SetUp['surface']]: string },
  ball: 'Balls',
  ballKinds: { range: 'range', own: 'own' } satisfies { readonly [B in SetUp['ball']]: string },
  wind: 'Wind',
  winds: {
    calm: 'calm',
    into: 'into',
    helping: 'helping',
    left: 'off the left',
    right: 'off the right',
  } satisfies { readonly [W in WindFrom]: string },
  speed: 'Its speed',
  speedUnit: (units: Units): string => (units === 'yd' ? 'mph' : 'm/s'),
  badSpeed: 'A speed from 0 to 99, or calm.',
  clubs: 'Clubs, in the order they are hit',
  clubsWhy:
    'From the short end of the bag to the long: first a block of each, then any of them by lot, so that each ball is a first ball.',
  noClubs: 'Choose a club at least.',
  noBag: 'No clubs are known yet. Type a carry or two on the Carries page first.',
  toCarries: 'Go to the carries',
  most: 'Balls in all',
  within: 'Sure to, if not as needed',
  badWithin: 'From 1 to 20, or empty.',
  begin: 'Begin',
  goOn: 'Go on',
  carry: (units: Units): string => `carry, ${units === 'yd' ? 'yards' : 'metres'}`,
  side: 'of the line',
  hands: { left: 'left', right: 'right' },
  keypad: 'Figures',
  rubOut: 'rub out',
  mishit: 'Mishit',
  undo: 'Undo the last ball',
  keep: 'Keep this ball',
  keys: 'By keyboard: figures, L or R, Enter; M for a mishit.',
  noCarry: 'Key how far it flew first: 1 to 490. One that was topped flew 1.',
  noSide: 'That is further to the side than it can lie. Leave the side empty if it was not seen.',
  range: 'Where it landed',
  tap: 'Tap where it landed, or key it in.',
  last: 'Last ten',
  lastColumns: { ball: 'ball', carry: 'carry', side: 'side' },
  noBalls: 'No ball yet.',
  more: 'How many more',
  stop: 'When to stop',
  club: 'Club',
  asCalled: 'as called',
  look: 'Nobody ahead, the line clear.',
  lookWhy: 'Look before every ball; shout at once if one strays.',
  pain: 'Stop at once at pain.',
  correct: 'Set up anew',
  end: 'End the session',
  ending: 'Bringing the balls in and fitting them.',
  notEnded: 'The server cannot be reached. All balls are kept in this browser: end it again when the line is back.',
  keptBall: (n: number): string => `Ball ${n} kept.`,
  undone: (n: number): string => `Ball ${n} taken back.`,
  enough: 'All that was worth calling is hit. Stop here, or choose a club.',
  notWritten: 'This browser writes nothing down: keep the page open until every ball is with the server.',
} as const;

export const clubWords = (o: Option): string => capital(optionWords(o));

/** What is called, and why. */
export function callWords(called: Called | undefined, own: boolean): string {
  if (own) return 'Chosen, not called.';
  if (called === undefined) return SESSION.enough;
  return called.inBlock === undefined
    ? 'Called by lot.'
    : `Ball ${called.inBlock.ball} of ${called.inBlock.of} in its block.`;
}

export const badMost = (most: number): string => `From 5 to ${most}.`;

/** "6 L", "0", or nothing when it was not seen. */
export function sideShort(sideM: number | undefined, units: Units): string {
  if (sideM === undefined) return '–';
  const whole = wholeLength(sideM, units);
  return whole === 0 ? '0' : `${Math.abs(whole)} ${whole < 0 ? 'L' : 'R'}`;
}

/** How many more balls the club in hand needs. */
export function moreWords(
  o: Option,
  { more, neededM }: { readonly more: number; readonly neededM: number },
  asked: boolean,
  units: Units,
): string {
  const club = optionWords(o);
  const sure = `sure to ±${Math.max(1, wholeLength(neededM, units))} ${units}`;
  const why = asked ? '' : ', as sure as a choice of club needs';
  if (more === 0) return `Enough: the ${club} is ${sure}${why}.`;
  return `${more} more make the ${club} ${sure}${why}.`;
}

/** The other clubs of the session, those that need most first. */
export const othersWords = (needs: readonly (readonly [Option, number])[]): string =>
  needs.map(([o, n]) => `${optionWords(o)} ${n}`).join(' · ');

export const countWords = (n: number, most: number): string => `Ball ${n} of ${most} at most`;

/** When to sit down, and when to stop. */
export function stopWords(n: number, most: number, tiring: boolean): string {
  const rest = Math.round(most / 2);
  if (tiring) return 'Carries fall off more than chance does: tired. Stop here; tired balls teach the wrong thing.';
  if (n >= most) return `${ballsWords(most)}: enough for a day. Stop here.`;
  if (n === rest) return 'Half way: sit down for two minutes.';
  return n < rest
    ? `Sit down for two minutes at ${rest}, stop at ${most}, sooner when balls start to come up short.`
    : `Stop at ${most}, sooner when balls start to come up short.`;
}

export const waitingWords = (n: number): string =>
  `${ballsWords(n)} or changes not with the server yet: kept here, sent when the line is back.`.replace(
    '1 ball or changes',
    '1 ball or change',
  );

export const refusedWords = (why: string): string => `The server refuses a ball, which stays here: ${why}.`;

/** "wind into, 10 mph · mat · range balls · white post". */
export function setUpWords(setUp: SetUp, units: Units): string {
  const { wind, speed, surface, ball, target } = setUp;
  const blows = wind === 'calm' ? 'calm' : `wind ${SESSION.winds[wind]}, ${speed} ${SESSION.speedUnit(units)}`;
  return [blows, SESSION.surfaces[surface], `${SESSION.ballKinds[ball]} balls`, target.trim()]
    .filter((s) => s !== '')
    .join(' · ');
}

export const ballRow = (n: number, { mishit }: HitBall): string => (mishit === true ? `${n} mishit` : `${n}`);

export const whoseSession = (n: number): string => (n === 0 ? 'a session' : `a session, ${ballsWords(n)}`);
