/** How true the fitted patterns are, on players whose truth is known: `npm run bench:patterns`, or with a number of players. */
import { type Changes, STRAYS, USUAL, virtualBalls, virtualPlayer, type World } from '@leeway/demo';
import { fitSwings, randomFrom, withBall } from '@leeway/engine';
import { type ApproachScore, scoreApproaches } from './approachScores.ts';
import { scoreSessions } from './sessionScores.ts';
import { scorePatterns, type Scores } from './patternScores.ts';
import { cpuMs, median } from './cpu.ts';

const players = Number(process.argv[2] ?? 240);
const out = (text: string): void => void process.stdout.write(`${text}\n`);

/** From 3 to 60, as many of each size. */
const some = (random: { next: () => number }): number => Math.round(3 * 20 ** random.next());

const percent = (x: number): string => (100 * x).toFixed(1);
function print(name: string, s: Scores): void {
  out(`${name}: ${s.swings} swings`);
  for (const [figure, c] of Object.entries(s.covered)) out(`  ${figure.padEnd(10)} ${c.map(percent).join('  ')}`);
  const three = ({ pooled, alone, plain }: Scores['rmsYd'], digits: number): string =>
    `${pooled.toFixed(digits)} with the bag, ${alone.toFixed(digits)} each club alone, ${plain.toFixed(digits)} plain mean`;
  out(`  error of the carry, yd: ${three(s.rmsYd, 2)}`);
  out(`  log score: ${three(s.logScore, 3)}`);
  out(`  mishit share less the truth: ${s.mishitBias.toFixed(3)}`);
}

const worlds: readonly World[] = [USUAL, ...STRAYS];
for (const world of worlds) {
  let scores: Scores | undefined;
  const ms = cpuMs(
    () => (scores = scorePatterns(world === USUAL ? players : Math.ceil(players / 4), 8, some, world, 77)),
  );
  if (scores !== undefined) print(world.name, scores);
  out(`  ${(ms / 1000).toFixed(1)} s CPU`);
}

for (const overYd of [0, 5, 10]) {
  const s = scoreApproaches(Math.ceil(players / 3), 30, overYd, 5);
  out(
    `30 greens hit of ${s.approaches.toFixed(0)} approaches, played at ${overYd} yd over the carry; error of the carry, yd:`,
  );
  const line = (words: string, x: ApproachScore): void =>
    out(
      `  ${words.padEnd(22)} mean ${x.biasYd.toFixed(2)}, root mean square ${x.rmsYd.toFixed(2)}, truths in 80: ${percent(x.covered80)}`,
    );
  line('greens hit alone', s.greensHit);
  line('and the sides missed', s.withMisses);
  out(
    `  ${'plain mean of marks'.padEnd(22)} mean ${s.plainMean.biasYd.toFixed(2)}, root mean square ${s.plainMean.rmsYd.toFixed(2)}`,
  );
}

const STILL = { perYear: 0, wanders: 0, day: 0 };
const changing: readonly (Changes & { readonly approaches?: number })[] = [
  { ...STILL, name: 'a swing that stays' },
  { ...STILL, name: 'one that wanders 3 % in a year and 1 % from day to day', wanders: 0.03, day: 0.01 },
  { ...STILL, name: 'one that loses 6 % in a year', perYear: -0.06, day: 0.01 },
  { ...STILL, name: 'range balls that go 93 %, nothing else hit', day: 0.01, rangeBall: 0.93 },
  {
    ...STILL,
    name: 'the same, and 15 greens hit with each of three clubs',
    day: 0.01,
    rangeBall: 0.93,
    approaches: 15,
  },
];
for (const changes of changing) {
  const s = scoreSessions(Math.ceil(players / 4), changes, changes.approaches ?? 0, 11);
  out(`five days over a year, six balls a club on each: ${changes.name}; error of the carry now, yd:`);
  for (const [words, x] of [
    ['all balls alike', s.alike],
    ['days and balls known', s.known],
  ] as const)
    out(
      `  ${words.padEnd(22)} mean ${x.biasYd.toFixed(2)}, root mean square ${x.rmsYd.toFixed(2)}, truths in 80: ${percent(x.covered80)}`,
    );
}

const random = randomFrom(3);
const player = virtualPlayer(random, 12);
const hit = player.swings.map((s) => ({ club: s.club, swing: s.swing, balls: virtualBalls(s, 30, random) }));
const bag = [...hit, ...hit.slice(-2).map((s) => ({ ...s, swing: 'half' }))];
let fits = fitSwings(player.level, bag, []);
const whole = median(Array.from({ length: 9 }, () => cpuMs(() => (fits = fitSwings(player.level, bag, [])))));
const one = median(Array.from({ length: 9 }, () => cpuMs(() => withBall(player.level, fits[5]!, { carryM: 120 }))));
out(`14 swings of 30 balls: ${whole.toFixed(0)} ms CPU; one more ball: ${one.toFixed(1)} ms`);
