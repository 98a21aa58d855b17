import type { Profile } from '@leeway/contract';
import { YARD_M, type Units } from '@leeway/engine';

/** The swings that a carry can be typed for. */
export const CLAIMED_SWINGS = ['full', 'three-quarter', 'half'] as const;
export type ClaimedSwing = (typeof CLAIMED_SWINGS)[number];

/** A club as it is typed: its name, and a carry a swing as text. */
export interface TypedClub {
  readonly name: string;
  readonly carries: { readonly [S in ClaimedSwing]: string };
}

type Clubs = NonNullable<Profile['clubs']>;
type Club = Clubs[number];

const perUnit = (units: Units): number => (units === 'yd' ? YARD_M : 1);
const LEAST = 1;
const MOST_M = 450;

/** A whole length is shown as typed before: to a tenth, without a nought at its end. */
const textOf = (m: number | undefined, units: Units): string =>
  m === undefined ? '' : String(Math.round((10 * m) / perUnit(units)) / 10);

export function typedOf(clubs: Clubs, units: Units): readonly TypedClub[] {
  return clubs.map(({ name, claimedCarryM, swings = [] }) => {
    const claimed = (swing: string): number | undefined => {
      const found = swings.find((s) => typeof s !== 'string' && s.name === swing);
      return typeof found === 'object' ? found.claimedCarryM : undefined;
    };
    return {
      name,
      carries: {
        full: textOf(claimedCarryM ?? claimed('full'), units),
        'three-quarter': textOf(claimed('three-quarter'), units),
        half: textOf(claimed('half'), units),
      },
    };
  });
}

/** Metres of a typed carry; `undefined` when nothing stands there, `NaN` when it is no carry. */
export function readCarryM(text: string, units: Units): number | undefined {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return undefined;
  const m = /^\d{1,3}(?:\.\d+)?$/.test(plain) ? Number(plain) * perUnit(units) : NaN;
  return m >= LEAST && m <= MOST_M ? m : NaN;
}

/**
 * The bag with what was typed: a carry whose text was not touched keeps its every digit, and everything else known of a club stays. Rows without a name
 * are left out; `undefined` when a carry is none, or a club stands there twice.
 */
export function clubsOf(typed: readonly TypedClub[], before: Clubs, units: Units): Clubs | undefined {
  const named = typed.filter(({ name }) => name.trim() !== '');
  const carries = named.flatMap((club) => CLAIMED_SWINGS.map((swing) => readCarryM(club.carries[swing], units)));
  const names = new Set(named.map(({ name }) => name.trim().toLowerCase()));
  if (names.size < named.length || carries.some((m) => Number.isNaN(m))) return undefined;
  const shown = typedOf(before, units);
  return named.map((club) => {
    const i = before.findIndex(({ name }) => name === club.name.trim());
    return typedClub(club, before[i], shown[i], units);
  });
}

function typedClub(typed: TypedClub, before: Club | undefined, shown: TypedClub | undefined, units: Units): Club {
  const { claimedCarryM: fullBefore, swings: swingsBefore = [], ...rest } = before ?? { name: typed.name.trim() };
  const claimOf = (swing: ClaimedSwing, was: number | undefined): number | undefined =>
    shown !== undefined && typed.carries[swing] === shown.carries[swing] && typed.carries[swing] !== ''
      ? was
      : readCarryM(typed.carries[swing], units);
  const full = claimOf('full', fullBefore);
  const between = CLAIMED_SWINGS.filter((swing) => swing !== 'full');
  const swings = new Map(swingsBefore.map((s) => (typeof s === 'string' ? [s, undefined] : [s.name, s.claimedCarryM])));
  for (const swing of between) {
    const m = claimOf(swing, swings.get(swing));
    if (m !== undefined) swings.set(swing, m);
    else if (swings.has(swing)) swings.set(swing, undefined);
  }
  const list = [...swings].map(([name, m]) => (m === undefined ? name : { name, claimedCarryM: m }));
  return {
    ...rest,
    ...(full === undefined ? {} : { claimedCarryM: full }),
    ...(list.length === 0 ? {} : { swings: list }),
  };
}
