import type { LedgerDocument } from '@leeway/contract';
import { strokesWords } from '@leeway/engine';

type Habit = LedgerDocument['habits'][number];
type Round = LedgerDocument['rounds'][number];

const HABIT_WORDS: { readonly [H in Habit['habit']]: string } = {
  spot: 'the spot: the right club and swing at the wrong place',
  number: 'the number: another club of the same swing',
  swing: 'the swing: another length of swing',
  risk: 'risk: much more chance of penalty or trees',
};

const signed = (x: number): string => {
  const words = Math.abs(x).toFixed(1);
  return Number(words) === 0 ? '0.0' : `${x < 0 ? '\u2212' : '+'}${words}`;
};

/** The account of rounds in plain words: what choosing cost first, then what the balls did, apart from it. */
export function ledgerText(document: LedgerDocument): string {
  const { player, rounds, habits, baselineIndex } = document;
  const holes = rounds.reduce((sum, r) => sum + r.holes, 0);
  const each = (of: (r: Round) => number): number => (18 * rounds.reduce((sum, r) => sum + of(r), 0)) / holes;
  const who = baselineIndex <= -5.5 ? 'the tour' : `a player of index ${baselineIndex}`;
  const lines = [
    `${player.name}: ${rounds.length === 1 ? 'one round' : `${rounds.length} rounds`}, ${holes} ${holes === 1 ? 'hole' : 'holes'}.`,
    ...rounds.map(roundLine),
    '',
    `To be saved by choosing better: ${each((r) => r.choice).toFixed(1)} strokes a round of eighteen.`,
    ...habits.flatMap(habitLines),
    '',
    'Against the usual of this player\u2019s own patterns, not of the choice, in strokes a round (a loss is +):',
    `  long shots ${signed(each((r) => r.execution))}, short game ${signed(each((r) => r.shortGame))}, putts ${signed(each((r) => r.putting))}.`,
    ...(document.shots.some((s) => s.part === 'long shot' && s.choice === undefined)
      ? ['  Long shots whose club is not known are left out of both.']
      : []),
    ...(document.shots.some((s) => s.choice !== undefined && !s.aimNoted)
      ? [
          'Aims that were not noted are taken as half at the best spot, half down the plain line, give or take 2 degrees.',
        ]
      : []),
    '',
    `Gained on ${who}, in strokes a round (a gain is +): long shots ${signed(each((r) => r.gained.longShot))}, short game ${signed(each((r) => r.gained.shortGame))}, putts ${signed(each((r) => r.gained.putt))}.`,
  ];
  return `${lines.join('\n')}\n`;
}

const roundLine = (r: Round): string =>
  `  ${r.date ?? 'a round'}: ${r.score} on ${r.holes} ${r.holes === 1 ? 'hole' : 'holes'}; the best choices of these patterns take ${r.expected.toFixed(1)}.`;

function habitLines({ habit, strokesPerRound: { mean, lo80, hi80 }, shown, examples }: Habit): string[] {
  if (mean < 0.05) return [];
  const sure = shown ? `${lo80.toFixed(1)} to ${hi80.toFixed(1)}, four times in five` : 'not shown yet';
  return [
    `  ${mean.toFixed(1)} (${sure}) by ${HABIT_WORDS[habit]}.`,
    ...examples.map((e) => `    hole ${e.hole}, shot ${e.shot}, round ${e.round}: ${strokesWords(e.strokes)}`),
  ];
}
