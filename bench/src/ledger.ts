/** How true the account of rounds is, on players whose habits are known: `npm run bench:ledger`, or with a number of seeds. */
import { readPlayer } from '@leeway/contract';
import {
  type BelievedHole,
  choiceOf,
  type Chooser,
  CHOOSERS,
  DEMO,
  type Flaw,
  lossesOf,
  measured,
  roundsOf,
  striker,
  truthOf,
} from '@leeway/demo';
import {
  type ExecutionHabit,
  executionHabits,
  type HoleGround,
  playerModel,
  type PlayerFile,
  randomFrom,
  solveHole,
  StrokesLeft,
} from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';

const seeds = Number(process.argv[2] ?? 50);
/** Water, sand and neither; two of them for the players whose patterns are fitted again with every seed. */
const HOLES = ['3', '7', '9', '12'];
const FITTED_HOLES = ['7', '9'];
const ROUNDS = 5;
const BALLS = 30;
/** A habit that costs this in a round has to be named. */
const COSTS = 0.5;

const out = (text: string): void => void process.stdout.write(`${text}\n`);
const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
const se = (xs: readonly number[]): number =>
  Math.sqrt(mean(xs.map((x) => (x - mean(xs)) ** 2)) / Math.max(1, xs.length - 1));

const course = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground).value?.holes ?? [];
const named = (holes: readonly string[]): HoleGround[] =>
  holes.flatMap((name) => course.filter((h) => h.hole === name));
const odile = readPlayer(readFileSync(DEMO.player, 'utf8'), DEMO.player).value;
if (odile === undefined) throw new RangeError('no player');

const solved = (file: PlayerFile, holes: readonly string[]): StrokesLeft[] => {
  const player = playerModel(file);
  return named(holes).map((ground) => new StrokesLeft(solveHole(ground, player), player));
};

const EXPECTED: { readonly [way in keyof typeof CHOOSERS]: readonly string[] } = {
  'chooses best': [],
  'aims at the flag': ['spot', 'risk'],
  'takes a club too little': ['number'],
  'forces full swings': ['swing'],
  'points about': ['spot', 'risk'],
};

const lefts = solved(odile, HOLES);
const known = lefts.map((left): BelievedHole => ({ believed: left, truth: left }));
for (const [way, expected] of Object.entries(EXPECTED)) {
  const chooser: Chooser = CHOOSERS[way as keyof typeof CHOOSERS];
  const firsts: string[] = [];
  const choices: number[] = [];
  const overBest: number[] = [];
  const sums = new Map<string, number>();
  let shown = 0;
  for (let seed = 1; seed <= seeds; seed++) {
    const holes = roundsOf(known, chooser, ROUNDS, randomFrom(1000 + seed));
    const habits = choiceOf(holes);
    const losses = lossesOf(holes);
    choices.push(losses.choice);
    overBest.push(losses.overBest);
    for (const { habit, strokesPerRound } of habits)
      sums.set(habit, (sums.get(habit) ?? 0) + strokesPerRound.mean / seeds);
    firsts.push(habits[0]?.habit ?? 'none');
    if (habits[0]?.shown === true) shown++;
  }
  const counts = Object.entries(Object.groupBy(firsts, (habit) => habit)).map(
    ([habit, of]) => `${habit} ${of?.length}`,
  );
  const each = [...sums].map(([habit, x]) => `${habit} ${x.toFixed(2)}`).join(', ');
  out(
    `${way}: charged ${mean(choices).toFixed(2)} ± ${se(choices).toFixed(2)} a round by choice, ` +
      `scores over the best ${mean(overBest).toFixed(2)} ± ${se(overBest).toFixed(2)}; ${each}`,
  );
  if (expected.length > 0)
    out(`  first of ${seeds}: ${counts.join(', ')} (wanted ${expected.join(' or ')}); shown ${shown}`);
}

const STRIKERS: readonly {
  readonly name: string;
  readonly way: keyof typeof CHOOSERS;
  readonly flaw: Flaw;
  readonly habit: ExecutionHabit;
}[] = [
  { name: 'fat-striker', way: 'points about', flaw: { mishits: 2.2, direction: 1, length: 1 }, habit: 'strike' },
  {
    name: 'good chooser with a poor strike',
    way: 'chooses best',
    flaw: { mishits: 1.7, direction: 1, length: 1.2 },
    habit: 'strike',
  },
];

for (const { name, way, flaw, habit } of STRIKERS) {
  const swings = striker(flaw);
  const truth = solved(truthOf(swings), FITTED_HOLES);
  const trial = roundsOf(
    truth.map((left) => ({ believed: left, truth: left })),
    CHOOSERS['chooses best'],
    1,
    randomFrom(1),
  );
  const really =
    executionHabits(truthOf(swings), trial).habits.find((h) => h.habit === habit)?.strokesPerRound.mean ?? NaN;
  out(
    `${name}: ${habit} truly costs ${really.toFixed(2)} a round${really < COSTS ? ' (too little to have to be named)' : ''}`,
  );
  const [costs, choices]: [number[], number[]] = [[], []];
  let [first, shown, within] = [0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const random = randomFrom(2000 + seed);
    const file = measured(swings, BALLS, random);
    const holes = roundsOf(
      solved(file, FITTED_HOLES).map((believed, i) => ({ believed, truth: truth[i] ?? believed })),
      CHOOSERS[way],
      ROUNDS,
      random,
    );
    const execution = executionHabits(file, holes);
    const all = [...choiceOf(holes), ...execution.habits].toSorted(
      (a, b) => b.strokesPerRound.mean - a.strokesPerRound.mean,
    );
    const own = execution.habits.find((h) => h.habit === habit);
    if (own === undefined) continue;
    costs.push(own.strokesPerRound.mean);
    choices.push(lossesOf(holes).choice);
    if (all[0]?.habit === habit) first++;
    if (own.shown) shown++;
    if (own.strokesPerRound.lo80 <= really && really <= own.strokesPerRound.hi80) within++;
  }
  out(
    `  found ${mean(costs).toFixed(2)} ± ${se(costs).toFixed(2)}; named first ${first} of ${seeds}, shown ${shown}, ` +
      `the truth in the interval of four in five ${within}; charged ${mean(choices).toFixed(2)} ± ${se(choices).toFixed(2)} by choice`,
  );
}
