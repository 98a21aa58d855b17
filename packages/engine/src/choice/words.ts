import { YARD_M } from '../quantity/units.ts';
import { readClub } from '../player/club.ts';
import type { Landmark } from './landmark.ts';
import { NOUGHT_CHANCE } from './reason.ts';

/** Units of the words. Everything inside is in metres. */
export type Units = 'yd' | 'm';

/** A distance as a whole number of the units, without their name. */
export const wholeLength = (metres: number, units: Units): number => {
  const rounded = Math.round(units === 'yd' ? metres / YARD_M : metres);
  return rounded === 0 ? 0 : rounded;
};

/** "143 yd". */
export const lengthWords = (metres: number, units: Units): string => `${wholeLength(metres, units)} ${units}`;

/** Strokes to two decimals, with a true minus. */
export const strokesWords = (n: number): string => {
  const text = n.toFixed(2);
  return text === '-0.00' ? '0.00' : text.replace('-', '\u2212');
};

/** A chance as balls in 100: whole, and 1 at least when it is not nought. */
export const ballsIn100 = (chance: number): number =>
  chance < NOUGHT_CHANCE ? 0 : Math.max(1, Math.round(100 * chance));

/**
 * Chances that sum to 1 as balls that sum to 100: whole, 1 at least for each that is not nought. What rounding adds or takes goes to the
 * largest remainders, and a 1 that had to be given is taken from the commonest.
 */
export function hundredBalls(chances: readonly number[]): number[] {
  const balls = chances.map((c) => (c < NOUGHT_CHANCE ? 0 : Math.max(1, Math.floor(100 * c))));
  const told = balls.map((n, i) => ({ n, i, left: 100 * (chances[i] ?? 0) - n })).filter(({ n }) => n > 0);
  for (let over = balls.reduce((a, b) => a + b, 0) - 100; over !== 0 && told.length > 0; over -= Math.sign(over)) {
    const give = over < 0;
    const may = give ? told : told.filter(({ i }) => (balls[i] ?? 0) > 1);
    const next = may.reduce((a, b) => ((give ? b.left > a.left : (balls[b.i] ?? 0) > (balls[a.i] ?? 0)) ? b : a));
    balls[next.i] = (balls[next.i] ?? 0) + (give ? 1 : -1);
    next.left += give ? -1 : 1;
  }
  return balls;
}

/** A club's name in fine words: "8I" is the 8-iron, "DR" the driver, "54" the 54°. What is not known stays as it is spelt. */
export function clubWords(club: string): string {
  const kind = readClub(club);
  if (kind === undefined) return club.trim();
  const [family = '', which = ''] = kind.key.split(' ');
  if (kind.family === 'driver' || kind.family === 'putter') return family;
  if (kind.family !== 'wedge') return `${which}-${family}`;
  return WEDGES[which] ?? `${which}°`;
}

const WEDGES: { readonly [which: string]: string } = { pitching: 'PW', gap: 'GW', sand: 'SW', lob: 'LW' };

/** "8-iron, full". */
export const optionWords = (o: { readonly club: string; readonly swing: string }): string =>
  `${clubWords(o.club)}, ${o.swing}`;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Where a spot lies from the flag: "6 yd left of the flag and 7 yd short of it". */
export function spotWords(at: { readonly beyondFlagM: number; readonly rightOfFlagM: number }, units: Units): string {
  const across = wholeLength(at.rightOfFlagM, units);
  const along = wholeLength(at.beyondFlagM, units);
  const side = across < 0 ? 'left' : 'right';
  const depth = along < 0 ? 'short of' : 'past';
  if (across === 0 && along === 0) return 'at the flag';
  if (across === 0) return `${Math.abs(along)} ${units} ${depth} the flag`;
  if (along === 0) return `${Math.abs(across)} ${units} ${side} of the flag`;
  return `${Math.abs(across)} ${units} ${side} of the flag and ${Math.abs(along)} ${units} ${depth} it`;
}

/** The same from further back than the flag can be reached from: "224 yd out, 10 yd left of the flag line". */
export function outWords(
  toFlagM: number,
  at: { readonly beyondFlagM: number; readonly rightOfFlagM: number },
  units: Units,
): string {
  const across = wholeLength(at.rightOfFlagM, units);
  const side = across < 0 ? 'left of' : 'right of';
  const line = across === 0 ? 'on the flag line' : `${Math.abs(across)} ${units} ${side} the flag line`;
  return `${lengthWords(toFlagM + at.beyondFlagM, units)} out, ${line}`;
}

/** "in the pond", "out of bounds", "on ground that is not mapped". */
export function finishWords(landmark: Landmark): string {
  if (landmark.surface === 'out') return 'out of bounds';
  const on = landmark.surface === 'unmapped' || landmark.surface === 'green' || landmark.surface === 'fairway';
  return `${on ? 'on' : 'in'} ${landmark.words}`;
}
