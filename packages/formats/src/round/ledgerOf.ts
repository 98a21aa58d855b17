import {
  type Fault,
  LEDGER_VERSION,
  type LedgerDocument,
  type Read,
  type RoundFile,
  type RoundHole,
} from '@leeway/contract';
import {
  type AccountedHole,
  accountHole,
  addCounts,
  baselineOf,
  type Baseline,
  CALM,
  choiceHabits,
  countsOf,
  type Counts,
  dearest,
  type Day,
  executionHabits,
  finishesTold,
  gainedOnHole,
  handicapIndexOf,
  type HoleAccount,
  type HoleGround,
  NO_COUNTS,
  perRound,
  type PlayedShot,
  type PlayerFile,
  playerModel,
  type PlayerModel,
  predictedScore,
  REFERENCE,
  type ScoreChances,
  solveHole,
  StrokesLeft,
  TOUR_INDEX,
} from '@leeway/engine';
import { playedHole } from './playedHole.ts';

/** What a ledger is made of. */
export interface LedgerAsked {
  readonly player: PlayerFile;
  readonly holes: readonly HoleGround[];
  /** Each round with the name that its faults are told under. */
  readonly rounds: readonly { readonly file: string; readonly round: RoundFile }[];
  /** The handicap index to gain strokes on; the player's own unless said. */
  readonly baselineIndex?: number;
}

/** The index whose averages strokes are gained on, unless another is said. */
const ownBaseline = (player: PlayerFile): number => Math.min(30, Math.max(TOUR_INDEX, handicapIndexOf(player)));

/**
 * The account of rounds, and what habits of choosing and of execution cost. Every hole is solved once for each flag and day, and again for each habit of
 * execution: `told` hears how far it is. Refused: a hole that is not there, a stroke that cannot be placed.
 */
export function ledgerOf(
  { player, holes, rounds, baselineIndex = ownBaseline(player) }: LedgerAsked,
  told: (done: number, total: number) => void = () => undefined,
): Read<LedgerDocument> {
  const played = rounds.reduce((sum, { round }) => sum + round.holes.length, 0);
  const accounts = new Accounts(holes, playerModel(player), baselineOf(baselineIndex));
  let done = 0;
  for (const [i, { file, round }] of rounds.entries()) {
    const taken = accounts.take(i + 1, round, file, () => told(done++, 2 * played));
    if (!taken) return { faults: accounts.faults };
  }
  const execution = executionHabits(player, accounts.played, (solves, of) =>
    told(played + (played * solves) / of, 2 * played),
  );
  const usual = `usual of index ${Number(handicapIndexOf(player).toFixed(1))}`;
  const choice = choiceHabits(accounts.chosen()).map((h) => ({ ...h, against: 'own best choice' as const }));
  const habits = [...choice, ...execution.habits.map((h) => ({ ...h, against: usual }))].toSorted(
    (a, b) => Number(b.shown) - Number(a.shown) || b.strokesPerRound.mean - a.strokesPerRound.mean,
  );
  const finishes = finishesTold(accounts.played.flatMap(({ account }) => account.shots.flatMap((s) => s.finish ?? [])));
  return {
    value: {
      version: LEDGER_VERSION,
      player: { name: player.name },
      baselineIndex,
      rounds: accounts.rounds,
      holes: accounts.played.map(holeRow),
      ...(finishes === undefined ? {} : { finishes }),
      habits: [...habits, penaltyHabit(accounts.played)].map((h) => ({ ...h, examples: [...h.examples] })),
      unmeasured: [...execution.unmeasured],
      shots: accounts.played.flatMap(shotRows),
    },
    faults: accounts.faults,
  };
}

type Round = LedgerDocument['rounds'][number];

/** The rounds accounted for so far. */
class Accounts {
  readonly rounds: Round[] = [];
  readonly played: AccountedHole[] = [];
  readonly faults: Fault[] = [];
  private readonly holes: readonly HoleGround[];
  private readonly player: PlayerModel;
  private readonly baseline: Baseline;
  private readonly solved = new Map<string, { readonly left: StrokesLeft; readonly scores: ScoreChances }>();

  constructor(holes: readonly HoleGround[], player: PlayerModel, baseline: Baseline) {
    this.holes = holes;
    this.player = player;
    this.baseline = baseline;
  }

  chosen = () =>
    this.played.map(({ round, left, account }) =>
      account.shots.flatMap(({ shot, choice }) =>
        choice === undefined ? [] : [{ round, hole: left.solution.ground.hole, shot, choice }],
      ),
    );

  /** False when a hole of the round cannot be accounted for: the faults say why. */
  take(round: number, file: RoundFile, path: string, told: () => void): boolean {
    const scores: ScoreChances[] = [];
    const sums = { holes: 0, score: 0, expected: 0, choice: 0, execution: 0, shortGame: 0, putting: 0, untold: 0 };
    const gained = { longShot: 0, shortGame: 0, putt: 0, total: 0, baseline: 0 };
    let counts: Counts = NO_COUNTS;
    for (const hole of file.holes) {
      told();
      const solved = this.solve(hole, file.day, path);
      if (solved === undefined) return false;
      const { left } = solved;
      const { ground } = left.solution;
      const read = playedHole(hole, { solution: left.solution, player: this.player, file: path });
      this.faults.push(...read.faults);
      if (read.value === undefined) return false;
      const account = accountHole(left, read.value);
      if (account === undefined) {
        this.refuse(
          path,
          `a stroke on hole ${hole.hole} from a lie that ${this.player.name} plays nothing from`,
          'a lie that is played from',
        );
        return false;
      }
      this.played.push({ round, left, shots: read.value, account });
      scores.push(solved.scores);
      const on = gainedOnHole(read.value, ground.flag, this.baseline);
      counts = addCounts(
        counts,
        countsOf(ground, read.value, (p) => left.solution.surfaceAt(p)),
      );
      addTo(sums, account);
      gained.longShot += on.byPart['long shot'];
      gained.shortGame += on.byPart['short game'];
      gained.putt += on.byPart.putt;
      gained.total += on.total;
      gained.baseline += on.baseline;
    }
    this.rounds.push({
      ...(file.date === undefined ? {} : { date: file.date }),
      ...sums,
      gained,
      counts: {
        ...counts,
        fairways: [...counts.fairways],
        greens: [...counts.greens],
        upAndDown: [...counts.upAndDown],
      },
      predicted: predictedScore(scores, sums.score),
    });
    return true;
  }

  private solve({ hole, flag }: RoundHole, day: RoundFile['day'], path: string) {
    const ground = this.holes.find((h) => h.hole === hole);
    if (ground === undefined) {
      this.refuse(path, `hole ${hole}`, `one of ${this.holes.map((h) => h.hole).join(', ')}`);
      return undefined;
    }
    const key = JSON.stringify([hole, flag, day]);
    const known = this.solved.get(key);
    if (known !== undefined) return known;
    const today =
      flag === undefined ? ground : { ...ground, flag: ground.frame.toPlane(flag), flagFrom: 'given' as const };
    const solution = solveHole(today, this.player, dayOf(day));
    const left = new StrokesLeft(solution, this.player);
    const tee = { at: ground.ball, lie: 'tee' } as const;
    const best = left.bests(tee)?.best;
    const solved = { left, scores: best === undefined ? [] : solution.scores(tee, best) };
    this.solved.set(key, solved);
    return solved;
  }

  private refuse(file: string, found: string, expected: string): void {
    this.faults.push({ code: 'cannot-account', level: 'refused', file, found, expected });
  }
}

/** The weather of a round; what is not said is the reference day's. */
function dayOf(day: RoundFile['day'] = {}): Day {
  return {
    ...REFERENCE,
    temperatureC: day.temperatureC ?? REFERENCE.temperatureC,
    stationHpa: day.pressureHpa ?? REFERENCE.stationHpa,
    humidityPercent: day.humidityPercent ?? REFERENCE.humidityPercent,
    wind: { ...CALM, speedMps: day.windMps ?? 0, fromDeg: day.windFromDeg ?? 0 },
  };
}

type Sums = {
  -readonly [K in 'holes' | 'score' | 'expected' | 'choice' | 'execution' | 'shortGame' | 'putting' | 'untold']: number;
};

function addTo(sums: Sums, { shots, score, expected }: HoleAccount): void {
  sums.holes += 1;
  sums.score += score;
  sums.expected += expected;
  for (const shot of shots) {
    sums.choice += sumOf(shot.choice);
    sums.execution += sumOf(shot.execution);
    if (shot.part === 'short game') sums.shortGame += shot.loss;
    else if (shot.part === 'putt') sums.putting += shot.loss;
    else if (shot.choice === undefined) sums.untold += shot.loss;
  }
}

const sumOf = (parts: object | undefined): number =>
  Object.values(parts ?? {}).reduce<number>((sum, x) => sum + Number(x), 0);

const holeRow = ({ round, left, account }: AccountedHole): LedgerDocument['holes'][number] => ({
  round,
  hole: left.solution.ground.hole,
  par: left.solution.ground.par,
  score: account.score,
  expected: account.expected,
  choice: account.shots.reduce((sum, { choice }) => sum + sumOf(choice), 0),
});

const shotRows = ({ round, left, shots, account }: AccountedHole): LedgerDocument['shots'] =>
  account.shots.map((shot, i) => {
    const { penaltyStrokes, finish: _, ...told } = shot;
    const played = shots[i] as PlayedShot;
    return {
      round,
      hole: left.solution.ground.hole,
      ...(played.club === undefined ? {} : { club: played.club }),
      ...(played.swing === undefined ? {} : { swing: played.swing }),
      lie: played.from.lie,
      from: played.from.at,
      to: played.finish === 'holed' ? left.solution.ground.flag : played.finish,
      ...told,
      ...(penaltyStrokes > 0 ? { penalty: penaltyStrokes } : {}),
    };
  });

/** Penalty strokes as they were counted; their cost is in the other habits too. */
function penaltyHabit(holes: readonly AccountedHole[]): LedgerDocument['habits'][number] {
  const strokesPerRound = perRound(
    holes.map(({ account }) => account.shots.reduce((sum, s) => sum + s.penaltyStrokes, 0)),
  );
  const examples = holes.flatMap(({ round, left, account }) =>
    account.shots.map((s) => ({ round, hole: left.solution.ground.hole, shot: s.shot, strokes: s.penaltyStrokes })),
  );
  return {
    habit: 'penalty',
    against: 'no penalties',
    strokesPerRound,
    shown: strokesPerRound.lo80 > 0,
    examples: [...dearest(examples, 1)],
  };
}
