import { cpus, loadavg } from 'node:os';
import { type HoleSolution, solveHole } from '@leeway/engine';
import {
  type HoleName,
  type PlayerName,
  referenceHole,
  referencePlayer,
  referenceSolution,
} from '@leeway/engine/testdata';
import { type Accuracy, accuracyOf, type Asked } from './accuracy.ts';
import { cpuMs, median } from './cpu.ts';
import { kernelTimes } from './kernels.ts';
import type { NaiveSettings } from './naive.ts';
import { naiveSolution } from './naiveSolution.ts';

/**
 * `npm run bench`: a hole solved, beside the naive rival in the same run, with both errors against the reference values.
 * `--full` gives the rival more balls and a finer grid, and minutes.
 */
const CASES: readonly (readonly [HoleName, PlayerName])[] = [
  ['h1_par3_125', 'player'],
  ['t1_symmetric', 'player_sym'],
];
const QUICK: readonly NaiveSettings[] = [{ samples: 500, gridM: 5, aimStepDeg: 2, sweeps: 3, seed: 1 }];
const FULL: readonly NaiveSettings[] = [
  ...QUICK,
  { samples: 2000, gridM: 5, aimStepDeg: 2, sweeps: 3, seed: 1 },
  { samples: 2000, gridM: 2.5, aimStepDeg: 1, sweeps: 3, seed: 1 },
];
const WARM_UPS = 5;
const REPEATS = 15;

const say = (line: string): void => void process.stdout.write(`${line}\n`);

function row(name: string, ms: number, found: Accuracy): void {
  const signed = (n: number): string => `${n < 0 ? '-' : '+'}${Math.abs(n).toFixed(4)}`;
  say(
    [
      name.padEnd(52),
      (ms < 1000 ? `${ms.toFixed(0)} ms` : `${(ms / 1000).toFixed(1)} s`).padStart(9),
      signed(found.teeError).padStart(9),
      found.teeRegret.toFixed(4).padStart(11),
      found.worstStateError.toFixed(4).padStart(12),
      found.worstRegret.toFixed(4).padStart(13),
      found.tableRms.toFixed(4).padStart(10),
    ].join(' '),
  );
}

say(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}`,
);
say('CPU time of one solve on one thread, everything included; errors in strokes against the reference solution.');
for (const [hole, playerName] of CASES) {
  const ground = referenceHole(hole);
  const player = referencePlayer(playerName);
  const reference = referenceSolution(hole);
  say('');
  say(
    `${`${hole}, ${playerName}`.padEnd(52)} ${'CPU'.padStart(9)} ${'tee err'.padStart(9)} ${'tee regret'.padStart(11)} ${'worst state'.padStart(12)} ${'worst regret'.padStart(13)} ${'table rms'.padStart(10)}`,
  );
  let solution: HoleSolution = solveHole(ground, player);
  for (let i = 1; i < WARM_UPS; i++) solution = solveHole(ground, player);
  const times = Array.from({ length: REPEATS }, () => cpuMs(() => (solution = solveHole(ground, player))));
  const ours = median(times);
  row(`Leeway, warm, median of ${REPEATS}`, ours, accuracyOf(solution, reference));
  for (const settings of process.argv.includes('--full') ? FULL : QUICK) {
    let rival: Asked | undefined;
    const ms = cpuMs(() => (rival = naiveSolution(ground, player, settings)));
    if (rival === undefined) continue;
    const { samples, gridM, aimStepDeg, sweeps } = settings;
    row(
      `naive: ${samples} balls, ${gridM} m, ${aimStepDeg} deg, ${sweeps} sweeps, once`,
      ms,
      accuracyOf(rival, reference),
    );
    say(`${''.padEnd(52)} ${`x ${(ms / ours).toFixed(0)}`.padStart(9)}`);
  }
}

say('');
say(`${'The hot loops by vectors, beside their plain twins'.padEnd(52)} ${'CPU'.padStart(9)} ${'plain'.padStart(9)}`);
for (const { name, vectorMs, plainMs, ratio } of kernelTimes()) {
  const ms = (n: number): string => `${n.toFixed(n < 10 ? 2 : 0)} ms`.padStart(9);
  say(`${name.padEnd(52)} ${ms(vectorMs)} ${ms(plainMs)} ${`x ${ratio.toFixed(1)}`.padStart(9)}`);
}
