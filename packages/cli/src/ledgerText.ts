import type { LedgerDocument } from '@leeway/contract';
import { CHOICE_HABITS, EXECUTION_HABITS, strokesWords, YARD_M } from '@leeway/engine';

type Habit = LedgerDocument['habits'][number];
type Round = LedgerDocument['rounds'][number];

const HABIT_WORDS: { readonly [H in Habit['habit']]: string } = {
  spot: 'the spot: the right club and swing at the wrong place',
  number: 'the number: another club of the same swing',
  swing: 'the swing: another length of swing',
  risk: 'risk: much more chance of penalty or trees',
  strike: 'the strike: how often it is a mishit',
  direction: 'direction: how wide good strikes spread',
  length: 'length: how unevenly good strikes carry',
  shortGame: 'the short game',
  putting: 'putting',
  penalty: 'penalties',
};
const CHOICES: readonly string[] = CHOICE_HABITS;

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
    ...habits.filter(({ habit }) => CHOICES.includes(habit)).flatMap(habitLines),
    '',
    ...executionLines(document),
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
    ...finishLines(document),
    '',
    `Gained on ${who}, in strokes a round (a gain is +): long shots ${signed(each((r) => r.gained.longShot))}, short game ${signed(each((r) => r.gained.shortGame))}, putts ${signed(each((r) => r.gained.putt))}.`,
  ];
  return `${lines.join('\n')}\n`;
}

function finishLines({ finishes }: LedgerDocument): string[] {
  if (finishes === undefined) return [];
  const { shots, short, in80 } = finishes;
  const inHundred = (x: number): number => Math.round(100 * x);
  return [
    '',
    `Of ${shots} long ${shots === 1 ? 'shot' : 'shots'} whose aim was noted ${inHundred(short.share)} in 100 finished short of the spot, by ${(short.meanM / YARD_M).toFixed(0)} yd on average; the patterns predict ${inHundred(short.predicted)}.`,
    `${inHundred(in80.along)} in 100 finished within the pattern's eight in ten for length, ${inHundred(in80.across)} for side.`,
  ];
}

/** Habits of execution, each against the prior of the player's own index. */
function executionLines({ habits, unmeasured }: LedgerDocument): string[] {
  const own = habits.filter(({ habit }) => (EXECUTION_HABITS as readonly string[]).includes(habit));
  const penalty = habits.filter(({ habit }) => habit === 'penalty');
  const [first] = own;
  return [
    ...(first === undefined ? [] : [`Habits of execution, against the ${first.against}, in strokes a round:`]),
    ...own.flatMap(habitLines),
    ...(unmeasured.length === 0
      ? []
      : [`  Never measured, so nothing to compare: ${unmeasured.map((h) => HABIT_WORDS[h]).join('; ')}.`]),
    ...(penalty.some(({ strokesPerRound }) => strokesPerRound.mean >= 0.05)
      ? ['Penalty strokes, which are in the others too:']
      : []),
    ...penalty.flatMap(habitLines),
  ];
}

const roundLine = (r: Round): string =>
  `  ${r.date ?? 'a round'}: ${r.score} on ${r.holes} ${r.holes === 1 ? 'hole' : 'holes'}; the best choices of these patterns take ${r.expected.toFixed(1)}, ${r.predicted.lo80} to ${r.predicted.hi80} four times in five.`;

function habitLines({ habit, strokesPerRound: { mean, lo80, hi80 }, shown, examples }: Habit): string[] {
  if (mean <= -0.05)
    return [
      `  ${signed(mean)} (${lo80.toFixed(1)} to ${hi80.toFixed(1)}, four times in five) by ${HABIT_WORDS[habit]}: better than usual.`,
    ];
  if (mean < 0.05) return [];
  const sure = shown ? `${lo80.toFixed(1)} to ${hi80.toFixed(1)}, four times in five` : 'not shown yet';
  return [
    `  ${mean.toFixed(1)} (${sure}) by ${HABIT_WORDS[habit]}.`,
    ...examples.map((e) => `    hole ${e.hole}, shot ${e.shot}, round ${e.round}: ${strokesWords(e.strokes)}`),
  ];
}
