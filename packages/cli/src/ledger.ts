import {
  LEDGER_VERSION,
  type LedgerDocument,
  readPlayer,
  readRound,
  type RoundFile,
  type RoundHole,
} from '@leeway/contract';
import {
  accountHole,
  type Baseline,
  baselineOf,
  choiceHabits,
  type ChosenShot,
  gainedOnHole,
  handicapIndexOf,
  type HoleGround,
  playerModel,
  type PlayerModel,
  solveHole,
  StrokesLeft,
  TOUR_INDEX,
} from '@leeway/engine';
import { playedHole, readGround } from '@leeway/formats';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { CAP_BYTES, readTextCapped } from './files.ts';
import { ledgerText } from './ledgerText.ts';
import { needed, refuse, tellFaults } from './planInput.ts';

/** `leeway ledger`: the account of rounds. */
export const ledger: Command = {
  name: 'ledger',
  summary: 'where the strokes of rounds went: choosing, execution, short game, putts',
  usage: ['leeway ledger --ground FILE --player FILE ROUND… [--baseline INDEX] [--json]'],
  examples: [
    'leeway ledger --ground course.osm --player kim.json may-14.json may-21.json',
    'leeway ledger --ground course.osm --player kim.json may-14.json --baseline tour --json',
  ],
  options: {
    ground: { kind: 'text', value: 'FILE', help: 'mapped ground: GeoJSON, OSM XML, or the JSON of an OSM query' },
    player: { kind: 'text', value: 'FILE', help: 'the player file' },
    baseline: {
      kind: 'text',
      value: 'INDEX',
      help: 'handicap index to gain strokes on, -5.5 to 30, or tour; the player’s own unless said',
    },
  },
  run: runLedger,
};

type Round = LedgerDocument['rounds'][number];
type Shot = LedgerDocument['shots'][number];

async function runLedger(given: Given, io: Io): Promise<number> {
  if (given.words.length === 0) throw new Usage('name a round file');
  const groundPath = needed(given, 'ground');
  const playerPath = needed(given, 'player');
  const stated = statedIndex(given);
  const groundText = await readTextCapped(groundPath, CAP_BYTES.ground);
  const playerText = await readTextCapped(playerPath, CAP_BYTES.player);
  const ground = groundText.value === undefined ? undefined : readGround(groundText.value, groundPath);
  const file = playerText.value === undefined ? undefined : readPlayer(playerText.value, playerPath);
  const rounds: { readonly path: string; readonly round: RoundFile }[] = [];
  const faults = [groundText, ground, playerText, file].flatMap((read) => read?.faults ?? []);
  for (const path of given.words) {
    const text = await readTextCapped(path, CAP_BYTES.player);
    const round = text.value === undefined ? undefined : readRound(text.value, path);
    faults.push(...text.faults, ...(round?.faults ?? []));
    if (round?.value !== undefined) rounds.push({ path, round: round.value });
  }
  tellFaults(faults, io, groundPath);
  if (ground?.value === undefined || file?.value === undefined || faults.some((f) => f.level === 'refused')) return 1;
  const index = stated ?? Math.min(30, Math.max(TOUR_INDEX, handicapIndexOf(file.value)));
  const accounts = new Accounts(ground.value.holes, playerModel(file.value), baselineOf(index), io);
  for (const { path, round } of rounds) if (!accounts.take(round, path)) return 1;
  const document: LedgerDocument = {
    version: LEDGER_VERSION,
    player: { name: file.value.name },
    baselineIndex: index,
    rounds: accounts.rounds,
    habits: choiceHabits(accounts.chosen).map((h) => ({ ...h, against: 'own best choice', examples: [...h.examples] })),
    shots: accounts.shots,
  };
  io.out(given.flag('json') ? `${JSON.stringify(document)}\n` : ledgerText(document));
  return 0;
}

function statedIndex(given: Given): number | undefined {
  const text = given.text('baseline')?.trim();
  if (text === undefined) return undefined;
  const index = text === 'tour' ? TOUR_INDEX : Number(text);
  if (text === '' || !(index >= TOUR_INDEX && index <= 30)) {
    throw new Usage(`--baseline: found "${text}"; expected a handicap index from -5.5 to 30, or tour`);
  }
  return index;
}

/** The rounds accounted for so far. A hole is solved once for each place of its flag. */
class Accounts {
  readonly rounds: Round[] = [];
  readonly shots: Shot[] = [];
  readonly chosen: ChosenShot[][] = [];
  private readonly holes: readonly HoleGround[];
  private readonly player: PlayerModel;
  private readonly baseline: Baseline;
  private readonly io: Io;
  private readonly solved = new Map<string, StrokesLeft>();

  constructor(holes: readonly HoleGround[], player: PlayerModel, baseline: Baseline, io: Io) {
    this.holes = holes;
    this.player = player;
    this.baseline = baseline;
    this.io = io;
  }

  /** False when a hole of the round cannot be accounted for, which has been told. */
  take(file: RoundFile, path: string): boolean {
    const round = this.rounds.length + 1;
    const sums = { holes: 0, score: 0, expected: 0, choice: 0, execution: 0, shortGame: 0, putting: 0, untold: 0 };
    const gained = { longShot: 0, shortGame: 0, putt: 0, total: 0, baseline: 0 };
    for (const hole of file.holes) {
      const left = this.left(hole, path);
      if (left === undefined) return false;
      const read = playedHole(hole, { solution: left.solution, player: this.player, file: path });
      tellFaults(read.faults, this.io, path);
      if (read.value === undefined) return false;
      const account = accountHole(left, read.value);
      if (account === undefined) {
        refuse(
          this.io,
          'no-stroke',
          path,
          `a stroke on hole ${hole.hole} from a lie that ${this.player.name} plays nothing from`,
          'a lie that is played from',
        );
        return false;
      }
      const on = gainedOnHole(read.value, left.solution.ground.flag, this.baseline);
      sums.holes += 1;
      sums.score += account.score;
      sums.expected += account.expected;
      gained.longShot += on.byPart['long shot'];
      gained.shortGame += on.byPart['short game'];
      gained.putt += on.byPart.putt;
      gained.total += on.total;
      gained.baseline += on.baseline;
      for (const { penaltyStrokes, ...shot } of account.shots) {
        this.shots.push({
          round,
          hole: hole.hole,
          ...shot,
          ...(penaltyStrokes > 0 ? { penalty: penaltyStrokes } : {}),
        });
        sums.choice += sumOf(shot.choice);
        sums.execution += sumOf(shot.execution);
        if (shot.part === 'short game') sums.shortGame += shot.loss;
        else if (shot.part === 'putt') sums.putting += shot.loss;
        else if (shot.choice === undefined) sums.untold += shot.loss;
      }
      this.chosen.push(
        account.shots.flatMap(({ shot, choice }) =>
          choice === undefined ? [] : [{ round, hole: hole.hole, shot, choice }],
        ),
      );
    }
    this.rounds.push({ ...(file.date === undefined ? {} : { date: file.date }), ...sums, gained });
    return true;
  }

  private left({ hole, flag }: RoundHole, path: string): StrokesLeft | undefined {
    const ground = this.holes.find((h) => h.hole === hole);
    if (ground === undefined) {
      refuse(this.io, 'no-such-hole', path, `hole ${hole}`, `one of ${this.holes.map((h) => h.hole).join(', ')}`);
      return undefined;
    }
    const key = JSON.stringify([hole, flag]);
    const known = this.solved.get(key);
    if (known !== undefined) return known;
    const today =
      flag === undefined ? ground : { ...ground, flag: ground.frame.toPlane(flag), flagFrom: 'given' as const };
    const left = new StrokesLeft(solveHole(today, this.player), this.player);
    this.solved.set(key, left);
    return left;
  }
}

const sumOf = (parts: object | undefined): number =>
  Object.values(parts ?? {}).reduce<number>((sum, x) => sum + Number(x), 0);
