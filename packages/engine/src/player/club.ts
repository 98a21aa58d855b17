/** What a club is, whatever it is called: driver, fairway wood, hybrid, iron, wedge, putter. */
export type ClubFamily = 'driver' | 'wood' | 'hybrid' | 'iron' | 'wedge' | 'putter';

export interface ClubKind {
  /** The same for every spelling of the same club, e.g. `iron 7`, `wedge 52`, `wedge sand`. */
  readonly key: string;
  readonly family: ClubFamily;
  /** A common loft for a club of this name, degrees; the prior is tabled against it. */
  readonly loftDeg: number;
}

const DRIVER: ClubKind = { key: 'driver', family: 'driver', loftDeg: 10.5 };
const PUTTER: ClubKind = { key: 'putter', family: 'putter', loftDeg: 3 };

const WOOD_LOFTS_DEG: { readonly [n: number]: number } = { 2: 13, 3: 15, 4: 16.5, 5: 18, 7: 21, 9: 24, 11: 27 };
const HYBRID_LOFTS_DEG: { readonly [n: number]: number } = { 1: 14, 2: 17, 3: 19.5, 4: 22, 5: 25, 6: 28, 7: 31, 8: 35 };
const IRON_LOFTS_DEG: { readonly [n: number]: number } = {
  1: 16,
  2: 18.5,
  3: 21,
  4: 24,
  5: 27,
  6: 30.5,
  7: 34,
  8: 38,
  9: 42,
};
const WEDGES: { readonly [name: string]: ClubKind } = {
  pitching: { key: 'wedge pitching', family: 'wedge', loftDeg: 46 },
  gap: { key: 'wedge gap', family: 'wedge', loftDeg: 50 },
  sand: { key: 'wedge sand', family: 'wedge', loftDeg: 55 },
  lob: { key: 'wedge lob', family: 'wedge', loftDeg: 60 },
};
const WEDGE_WORDS: { readonly [word: string]: keyof typeof WEDGES } = {
  p: 'pitching',
  pw: 'pitching',
  pitching: 'pitching',
  g: 'gap',
  gw: 'gap',
  gap: 'gap',
  a: 'gap',
  aw: 'gap',
  approach: 'gap',
  s: 'sand',
  sw: 'sand',
  sand: 'sand',
  l: 'lob',
  lw: 'lob',
  lob: 'lob',
};
const FAMILY_WORDS: { readonly [word: string]: 'wood' | 'hybrid' | 'iron' } = {
  w: 'wood',
  wd: 'wood',
  wood: 'wood',
  holz: 'wood',
  bois: 'wood',
  madera: 'wood',
  fw: 'wood',
  metal: 'wood',
  h: 'hybrid',
  hy: 'hybrid',
  hyb: 'hybrid',
  hybrid: 'hybrid',
  u: 'hybrid',
  ut: 'hybrid',
  utility: 'hybrid',
  i: 'iron',
  ir: 'iron',
  fe: 'iron',
  iron: 'iron',
  eisen: 'iron',
  fer: 'iron',
  hierro: 'iron',
};
const NUMBER_WORDS: readonly string[] = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/**
 * Reads the name of a club in any of its common spellings: `7i`, `7 Iron`, `I7`, `7-iron` and `Fe7` are one club; a wedge may be
 * named by its loft (`52`, `52°`, `52 deg wedge`). Gives `undefined` for a name that is none of them.
 */
export function readClub(name: string): ClubKind | undefined {
  const words = name
    .toLowerCase()
    .replace(/\([^)]*\)/g, ' ')
    .match(/\d+(?:\.\d+)?|[a-z]+/g);
  if (!words) return undefined;
  const text = words.join(' ');
  if (/^(?:(?:1 )?(?:driver|drv|dr|d)|(?:1 (?:w|wd|wood|metal))|w 1)$/.test(text)) return DRIVER;
  if (/^(?:putter|pt|putt|ptr)$/.test(text)) return PUTTER;
  return readNumbered(words) ?? readWedge(words);
}

function readNumbered(words: readonly string[]): ClubKind | undefined {
  const kept = words.filter((w) => w !== 'fairway');
  if (kept.length !== 2) return undefined;
  const numbers = kept.map((w) => (/^\d+$/.test(w) ? Number(w) : NUMBER_WORDS.indexOf(w)));
  const at = numbers.findIndex((n) => n > 0);
  const n = numbers[at];
  const family = FAMILY_WORDS[kept[1 - at] ?? ''];
  if (n === undefined || family === undefined) return undefined;
  const lofts = { wood: WOOD_LOFTS_DEG, hybrid: HYBRID_LOFTS_DEG, iron: IRON_LOFTS_DEG }[family];
  const loftDeg = lofts[n];
  return loftDeg === undefined ? undefined : { key: `${family} ${n}`, family, loftDeg };
}

function readWedge(words: readonly string[]): ClubKind | undefined {
  const kept = words.filter(
    (w) => !['wedge', 'w', 'deg', 'degree', 'degrees', 'd', 'o'].includes(w) || words.length === 1,
  );
  const loft = kept.map(Number).find((n) => n >= 40 && n <= 70);
  if (loft !== undefined && kept.length <= 2) {
    const word = kept.find((w) => !/^\d/.test(w));
    if (word === undefined || WEDGE_WORDS[word] !== undefined)
      return { key: `wedge ${loft}`, family: 'wedge', loftDeg: loft };
  }
  const named = kept.length === 1 ? WEDGE_WORDS[kept[0] ?? ''] : undefined;
  return named === undefined ? undefined : WEDGES[named];
}

/** The key that two spellings of one club share; an unknown name is its own key, without regard to case and spaces. */
export const clubKey = (name: string): string => readClub(name)?.key ?? name.trim().toLowerCase().replace(/\s+/g, ' ');

/** The share of a full swing's carry that an in-between swing goes: our assumption, until it has balls of its own. */
const PART_SWINGS: readonly { readonly key: string; readonly words: RegExp; readonly carryShare: number }[] = [
  { key: 'three-quarter', words: /^(?:three quarters?|3 4|3q|3 quarters?|¾|75)(?: swing)?$/, carryShare: 0.88 },
  { key: 'half', words: /^(?:half|1 2|½|50)(?: swing)?$/, carryShare: 0.7 },
  { key: 'quarter', words: /^(?:quarter|1 4|1q|¼|25)(?: swing)?$/, carryShare: 0.45 },
];

const swingWords = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[-_/%\s]+/g, ' ')
    .trim();

const FULL = /^(?:full|normal|stock|f|fs|100|)(?: swing| shot)?$/;

/** Whether a swing's name means the full swing. A shot without a swing's name is a full swing. */
export const isFullSwing = (name: string): boolean => FULL.test(swingWords(name));

/** The key that spellings of one swing share: `full`, `three-quarter`, `half`, `quarter`, or the name itself. */
export function swingKey(name: string): string {
  const words = swingWords(name);
  if (FULL.test(words)) return 'full';
  return PART_SWINGS.find((s) => s.words.test(words))?.key ?? words;
}

/** How far an in-between swing goes as a share of the full swing; 0.8 for a name that says nothing of its length. */
export const carryShareOf = (swing: string): number =>
  isFullSwing(swing) ? 1 : (PART_SWINGS.find((s) => s.key === swingKey(swing))?.carryShare ?? 0.8);
