import {
  type CarryEntry,
  type CarryGap,
  type GapCost,
  isFullSwing,
  type LadderFault,
  readClub,
  swingKey,
  type WayToFill,
} from '@leeway/engine';

type Whole = (m: number) => string;

/** Gaps, the dearest first: what each costs a round, and the ways to fill it with the carry, spread and saving to expect. */
export function gapLines(
  gaps: readonly CarryGap[],
  costs: readonly GapCost[],
  holes: string,
  whole: Whole,
  word: string,
): readonly string[] {
  if (gaps.length === 0) return [];
  const lines = costs.flatMap((c) => {
    const plain = gaps.find((g) => g.fromM === c.fromM && g.toM === c.toM)?.ways ?? [];
    const head = `  ${whole(c.toM - c.fromM)} ${word} between ${whole(c.fromM)} and ${whole(c.toM)}: ${costOf(c)}`;
    const worth = c.ways.filter((w) => w.strokesARound >= TIE).map((w) => `    ${wayOf(w, whole)}`);
    return [head, ...(worth.length > 0 ? worth : [`    ${plain.join('; or ')}`])];
  });
  return [`Gaps, by strokes a round on ${holes}`, ...lines, ''];
}

/** Savings under this are not told apart. */
const TIE = 0.005;

const costOf = ({ asked, strokesARound }: GapCost): string =>
  strokesARound < TIE
    ? `asked for ${asked.toFixed(1)} times a round; it costs next to nothing`
    : `asked for ${asked.toFixed(1)} times a round; it costs ${strokesARound.toFixed(2)}`;

function wayOf({ kind, club, carryM, sdM, strokesARound }: WayToFill, whole: Whole): string {
  const what = {
    soft: `a soft ${club}`,
    'grip down': `the ${club} gripped down`,
    'new club': 'a club between',
    forced: `a forced ${club}`,
  }[kind];
  return `${what}: ${whole(carryM)} ±${whole(sdM)}, saves ${strokesARound.toFixed(2)}`;
}

/** Clubs that do not stand as their lofts say. */
export function orderLines(faults: readonly LadderFault[], whole: Whole, word: string): readonly string[] {
  if (faults.length === 0) return [];
  return [
    'Clubs that do not stand as their lofts say',
    ...faults.map(({ kind, stronger, weaker, beyondM, chance }) =>
      kind === 'order'
        ? `  the ${weaker} carries ${whole(-beyondM)} ${word} beyond the ${stronger} (${(100 * chance).toFixed(0)} in 100): check their lofts, or the names of the balls`
        : `  the ${stronger} and the ${weaker} carry the same within 4 yards: one of them may go, or its loft be bent`,
    ),
    '',
  ];
}

const SWINGS = ['full', 'three-quarter', 'half', 'quarter'] as const;

/** Wedges by swing: carry and how far off it may be, where a wedge has an in-between swing with balls. */
export function wedgeLines(entries: readonly CarryEntry[], whole: Whole): readonly string[] {
  const wedges = entries.filter((e) => readClub(e.club)?.family === 'wedge' && e.n > 0);
  const used = SWINGS.filter((s) => wedges.some((e) => swingKey(e.swing) === s));
  if (wedges.every((e) => isFullSwing(e.swing))) return [];
  const clubs = [...new Set(wedges.map((e) => e.club))];
  const cell = (club: string, swing: string): string => {
    const e = wedges.find((w) => w.club === club && swingKey(w.swing) === swing);
    if (e === undefined) return '-';
    return `${whole(e.carryM.mean)} ±${whole((e.carryM.hi95 - e.carryM.lo95) / 2)}`;
  };
  const rows = [['wedges', ...used], ...clubs.map((club) => [club, ...used.map((s) => cell(club, s))])];
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((r) => r[i]!.length)));
  return [
    ...rows.map((r) => r.map((x, i) => (i === 0 ? x.padEnd(widths[i]!) : x.padStart(widths[i]!))).join('  ')),
    '',
  ];
}
