/** Where a stroke finished, by the letter that is typed for it. */
export const FINISHES = {
  f: 'fairway',
  g: 'green',
  r: 'rough',
  s: 'bunker',
  t: 'recovery',
  w: 'penalty',
  o: 'out',
  h: 'holed',
} as const;
export type FinishKey = keyof typeof FINISHES;

/** On which side of what was aimed at, by the key that is typed for it. */
export const SIDES = { ',': 'left', '.': 'right', '-': 'short', '=': 'long' } as const;
export type SideKey = keyof typeof SIDES;

/** One stroke as typed: what is not typed is guessed later. */
export interface TypedStroke {
  readonly club?: string;
  readonly to: FinishKey;
  readonly side?: (typeof SIDES)[SideKey];
}

/** A hole as typed: strokes, and putts once the ball is on the green. */
export interface TypedHole {
  readonly strokes: readonly TypedStroke[];
  readonly putts: number;
  /** Holed: nothing more is to be typed. */
  readonly whole: boolean;
  /** The first key that means nothing where it stands. */
  readonly wrong?: string;
}

/**
 * Reads the keys of a hole: for each stroke a club if the guess is not right, where it finished, and on which side if that is to be said; then the number of putts.
 * `clubs` gives the club of a key. Blanks are left out.
 */
export function readTyped(text: string, clubs: ReadonlyMap<string, string>): TypedHole {
  const strokes: TypedStroke[] = [];
  let club: string | undefined;
  let putts = 0;
  let whole = false;
  for (const key of text.toLowerCase().replaceAll(/\s/g, '')) {
    const wrong = { strokes, putts, whole: false, wrong: key };
    if (whole) return wrong;
    const last = strokes.at(-1);
    if (club === undefined && last?.to === 'g' && /\d/.test(key)) {
      putts = Number(key);
      if (putts === 0) return wrong;
      whole = true;
    } else if (isSide(key)) {
      if (last === undefined || club !== undefined) return wrong;
      strokes[strokes.length - 1] = { ...last, side: SIDES[key] };
    } else if (isFinish(key) && last?.to !== 'g') {
      strokes.push({ ...(club === undefined ? {} : { club }), to: key });
      club = undefined;
      whole = key === 'h';
    } else {
      const named = clubs.get(key);
      if (named === undefined || club !== undefined || last?.to === 'g') return wrong;
      club = named;
    }
  }
  return { strokes, putts, whole };
}

const isFinish = (key: string): key is FinishKey => key in FINISHES;
const isSide = (key: string): key is SideKey => key in SIDES;

/** Strokes with penalties and putts. */
export const scoreOf = ({ strokes, putts }: TypedHole): number =>
  strokes.length + putts + strokes.filter(({ to }) => to === 'w' || to === 'o').length;

/** Keys of wedges after the first, which is `p`, the longest first. */
const WEDGE_KEYS = ['p', 'a', 'b', 'c', 'e'];

/** A key for every club: its number for an iron (else a hybrid, else a wood), `d` for the driver, and letters for wedges and what is left. */
export function keysOf(
  clubs: readonly { readonly name: string; readonly family: string; readonly number?: number }[],
): ReadonlyMap<string, string> {
  const keys = new Map<string, string>();
  const give = (key: string | undefined, name: string): void => {
    if (key !== undefined && !keys.has(key)) keys.set(key, name);
  };
  for (const { name, family } of clubs) if (family === 'driver') give('d', name);
  for (const family of ['iron', 'hybrid', 'wood'])
    for (const club of clubs)
      if (club.family === family && club.number !== undefined) give(String(club.number), club.name);
  const wedges = clubs.filter(({ family }) => family === 'wedge');
  wedges.forEach(({ name }, i) => give(WEDGE_KEYS[i], name));
  const spare = ['u', 'v', 'x', 'y', 'z'];
  for (const { name } of clubs) if (![...keys.values()].includes(name)) give(spare.shift(), name);
  return keys;
}
