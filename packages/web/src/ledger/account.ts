import type { Bar, StrokesScale } from '@leeway/chart';
import { CHOICE_HABITS, LEAST_HOLES, perRound } from '@leeway/engine';
import type { KeptLedger } from './kept.ts';

/** Rows of the account, in the order in which they stand. */
export const CHOICE_ROWS = CHOICE_HABITS;
export const USUAL_ROWS = ['strike', 'direction', 'length', 'luck', 'shortGame', 'putting'] as const;
export type RowName = (typeof CHOICE_ROWS)[number] | (typeof USUAL_ROWS)[number];

type Shot = KeptLedger['shots'][number];

export interface Row extends Bar {
  readonly name: RowName;
  /** The mean of the other rounds, where there are any. */
  readonly before?: number;
}

export interface Account {
  readonly choice: readonly Row[];
  readonly usual: readonly Row[];
  readonly choiceTotal: Bar & { readonly before?: number };
  readonly usualTotal: Bar & { readonly before?: number };
  readonly scale: StrokesScale;
}

/** What a stroke lost in a row; nothing where it has no part in it. */
export function lostIn(shot: Shot, row: RowName): number {
  switch (row) {
    case 'spot':
    case 'number':
    case 'swing':
    case 'risk':
      return shot.choice?.[row] ?? 0;
    case 'shortGame':
      return shot.part === 'short game' ? shot.loss : 0;
    case 'putting':
      return shot.part === 'putt' ? shot.loss : 0;
    default:
      return shot.execution?.[row] ?? 0;
  }
}

/** The account of one round, in strokes of that round, with the mean of the others. */
export function accountOf(ledger: KeptLedger, others: readonly KeptLedger[]): Account {
  const sumOf = (rows: readonly RowName[]) => ({
    ...barOf(ledger, rows),
    ...(others.length === 0
      ? {}
      : { before: others.reduce((sum, other) => sum + barOf(other, rows).mean, 0) / others.length }),
  });
  const choice = CHOICE_ROWS.map((name): Row => ({ name, ...sumOf([name]) }));
  const usual = USUAL_ROWS.map((name): Row => ({ name, ...sumOf([name]) }));
  const ends = [...choice, ...usual].flatMap(({ mean, lo80, hi80 }) => [mean, lo80, hi80]);
  const half = (x: number): number => Math.round(2 * x) / 2;
  return {
    choice,
    usual,
    choiceTotal: sumOf(CHOICE_ROWS),
    usualTotal: sumOf(USUAL_ROWS),
    scale: {
      from: Math.max(-3, half(Math.min(-0.5, ...ends) - 0.25)),
      to: Math.min(4, half(Math.max(1, ...ends) + 0.25)),
    },
  };
}

function barOf({ holes, shots }: KeptLedger, rows: readonly RowName[]): Bar {
  const byHole = holes.map(({ hole }) =>
    shots.reduce((sum, s) => sum + (s.hole === hole ? rows.reduce((lost, row) => lost + lostIn(s, row), 0) : 0), 0),
  );
  const { mean, lo80, hi80 } = perRound(byHole);
  const each = holes.length / 18;
  return {
    mean: mean * each,
    lo80: lo80 * each,
    hi80: hi80 * each,
    shown: holes.length >= LEAST_HOLES && (lo80 > 0 || hi80 < 0),
  };
}

/** The strokes of a row that lost most, none under a tie. */
export const shotsOf = (ledger: KeptLedger, row: RowName): readonly (Shot & { readonly lost: number })[] =>
  ledger.shots
    .map((shot) => ({ ...shot, lost: lostIn(shot, row) }))
    .filter(({ lost }) => Math.abs(lost) >= 0.02)
    .toSorted((a, b) => b.lost - a.lost);

/** The three holes where choosing cost most, as they are underscored; none under a tenth. */
export const worstHoles = ({ holes }: KeptLedger): ReadonlySet<string> =>
  new Set(
    holes
      .filter(({ choice }) => choice >= 0.1)
      .toSorted((a, b) => b.choice - a.choice)
      .slice(0, 3)
      .map(({ hole }) => hole),
  );
