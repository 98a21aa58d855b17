import {
  clubWords,
  type GreenZone,
  isFullSwing,
  readClub,
  swingKey,
  type Units,
  wholeLength,
  YARD_M,
} from '@leeway/engine';
import type { HoleDocument, ShotDocument } from './plan.ts';

/** A hole's plan in one line, as a coach writes it on a card: "3W 10 left of right bunker · 8i middle · never right". */

const SWINGS: { readonly [key: string]: string } = { 'three-quarter': ' ¾', half: ' ½', quarter: ' ¼' };
/** A swing of the short game is named by its length too, which is told by where it is played from. */
const LENGTH = / \d+ (?:yd|m)$/;
const FAMILIES = { driver: 'D', wood: 'W', hybrid: 'H', iron: 'i' } as const;

/** "3W", "8i", "PW", "54°", "8i ¾". What is not known stays as it is spelt. */
export function shortOption({ club, swing }: { readonly club: string; readonly swing: string }): string {
  const kind = readClub(club);
  const how = isFullSwing(swing) ? '' : (SWINGS[swingKey(swing)] ?? ` ${swing.replace(LENGTH, '')}`);
  if (kind === undefined || kind.family === 'wedge' || kind.family === 'putter') return clubWords(club) + how;
  const which = kind.family === 'driver' ? '' : (kind.key.split(' ')[1] ?? '');
  return `${which}${FAMILIES[kind.family]}${how}`;
}

/** "middle", "front left", "back", "right"; the middle of a side is told by its side. */
export function zoneWords({ depth, side }: GreenZone): string {
  if (depth === 'middle') return side;
  return side === 'middle' ? depth : `${depth} ${side}`;
}

/** A miss to a side where this much room is left, and half as much as to the other, is never to be made. */
const NARROW_M = 15 * YARD_M;
const MUCH_WIDER = 1.5;
const SIDES = [
  ['leftM', 'rightM', 'left'],
  ['rightM', 'leftM', 'right'],
  ['shortM', 'longM', 'short'],
  ['longM', 'shortM', 'long'],
] as const;

/** The side that costs a quarter of a stroke soonest, when it does so within 15 yd and the other side leaves half as much room again. */
export function neverWords({ room }: Pick<ShotDocument, 'room'>): string | undefined {
  const arms = room.at(-1);
  if (arms === undefined) return undefined;
  const found = SIDES.flatMap(([near, far, words]) => {
    const [nearM, farM] = [arms[near], arms[far] ?? Infinity];
    return nearM !== null && nearM <= NARROW_M && farM >= MUCH_WIDER * nearM ? [{ nearM, words }] : [];
  });
  const [worst] = found.toSorted((a, b) => a.nearM - b.nearM);
  return worst && `never ${worst.words}`;
}

/** The line of a hole; `zones` tells for each shot where on the green its spot is, if it is on it. */
export function holeLine({ shots }: HoleDocument, zones: readonly (GreenZone | undefined)[], units: Units): string {
  const parts = shots.map((shot, i) => {
    const zone = zones[i];
    return `${shortOption(shot.option)} ${zone === undefined ? layUpWords(shot, units) : zoneWords(zone)}`;
  });
  const [last] = shots.slice(-1);
  const never = last && neverWords(last);
  return [...parts, ...(never === undefined ? [] : [never])].join(' · ');
}

/** Where a shot is started, by what the player sees, else how far it finishes. A spot beside the green is told by what is left. */
function layUpWords({ startLine, finishesM, spot }: ShotDocument, units: Units): string {
  const leavesM = Math.hypot(spot.beyondFlagM, spot.rightOfFlagM);
  if (startLine === undefined) return `${wholeLength(finishesM, units)} out, leaves ${wholeLength(leavesM, units)}`;
  const seen = startLine.replace(/\bthe /g, '').replace(/ (?:yd|m)\b/, '');
  return /^\d/.test(seen) ? seen : `at ${seen}`;
}
