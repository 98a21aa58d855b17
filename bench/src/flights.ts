import { cpus, loadavg } from 'node:os';
import {
  CALM,
  COARSE_STEP_S,
  emptyFlight,
  fly,
  type FlightAir,
  flyInto,
  type Launch,
  Reach,
  REFERENCE,
  STEP_S,
} from '@leeway/engine';
import { plainFlight } from '@leeway/engine/testdata/plainFlight';
import { cpuMs, median } from './cpu.ts';
import { errorTable } from './flightErrors.ts';

/**
 * `npm run bench:flight`: the model's errors on measured flights, then flights a second beside the plain rival in the same run, with both
 * errors against steps of .002 s, and the table of a hole.
 */
const REPEATS = 7;
const EXACT_STEP_S = 0.002;
const GROWTH_ROUNDS = 100;
/** 20 mph. */
const STRONG_MPS = 8.9408;

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** A bag, from wedge to driver, with some tilt: 40 launches. */
const BAG: readonly Launch[] = Array.from({ length: 40 }, (_, i) => ({
  speedMps: 34 + i,
  launchDeg: 29 - 0.46 * i,
  spinRpm: 9500 - 175 * i,
  axisDeg: (i % 7) - 3,
}));
const DIRECTIONS = 72;
const HEIGHTS_M = [-10, -5, 0, 5, 10];

const air = (windMps: number, fromRad: number): FlightAir => ({
  densityKgM3: 1.2,
  viscosityPaS: 1.8e-5,
  tailMps: -windMps * Math.cos(fromRad),
  rightMps: windMps * Math.sin(fromRad),
  windHeightM: 10,
  roughnessM: 0.03,
});

const airs = (windMps: number): readonly FlightAir[] =>
  Array.from({ length: DIRECTIONS }, (_, i) => air(windMps, (2 * Math.PI * i) / DIRECTIONS));

type Fly = (launch: Launch, through: FlightAir) => { readonly carryM: number; readonly sideM: number };

function worstM(through: readonly FlightAir[], flown: Fly): number {
  let worst = 0;
  for (const launch of BAG) {
    for (const a of through) {
      const exact = fly(launch, a, 0, EXACT_STEP_S);
      const f = flown(launch, a);
      worst = Math.max(worst, Math.hypot(f.carryM - exact.carryM, f.sideM - exact.sideM));
    }
  }
  return worst;
}

function flightsASecond(through: readonly FlightAir[], repeats: number, flown: Fly): number {
  let sum = 0;
  const round = (): void => {
    for (const a of through) for (const launch of BAG) sum += flown(launch, a).carryM;
  };
  round();
  const times = Array.from({ length: repeats }, () => cpuMs(round));
  if (!Number.isFinite(sum)) throw new Error('a flight was lost');
  return (1000 * BAG.length * through.length) / median(times);
}

say(errorTable());
say('* left out of the totals: times that end before the landing, carries that were only inferred.');
say('');
say(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1) ?? '?'}, Node ${process.version}`,
);
say(`CPU time, one thread, median of ${REPEATS} rounds; errors against steps of ${EXACT_STEP_S} s.`);
/** Memory that a flight leaves behind, bytes: what the heap grows by between collections, summed. */
function bytesAFlight(work: () => void, flights: number): number {
  let [grown, before] = [0, process.memoryUsage().heapUsed];
  for (let i = 0; i < GROWTH_ROUNDS; i++) {
    work();
    const now = process.memoryUsage().heapUsed;
    grown += Math.max(0, now - before);
    before = now;
  }
  return grown / GROWTH_ROUNDS / flights;
}

const out = emptyFlight();
for (const [name, windMps] of [
  ['calm', 0],
  ['20 mph from everywhere', STRONG_MPS],
] as const) {
  const through = airs(windMps);
  const few = through.filter((_, i) => i % 12 === 0);
  for (const stepS of [STEP_S, 0.3, COARSE_STEP_S]) {
    const rate = flightsASecond(through, REPEATS, (launch, a) => flyInto(out, launch, a, 0, stepS));
    const error = worstM(few, (launch, a) => flyInto(out, launch, a, 0, stepS));
    say(
      `${name.padEnd(24)} steps of ${stepS} s: ${rate.toFixed(0).padStart(7)} flights a second, off by ${error.toFixed(4)} m at most`,
    );
  }
  const plain: Fly = (launch, a) => plainFlight(launch, a, 0, 0.01);
  const rate = flightsASecond(few.slice(0, 1), 3, plain);
  say(
    `${name.padEnd(24)} plain, .01 s:     ${rate.toFixed(0).padStart(7)} flights a second, off by ${worstM(few.slice(0, 1), plain).toFixed(4)} m at most`,
  );
}

const through = airs(STRONG_MPS);
const table = new Float64Array(2 * BAG.length * DIRECTIONS * HEIGHTS_M.length);
function fillTable(): void {
  let at = 0;
  for (const launch of BAG) {
    for (const a of through) {
      for (const heightM of HEIGHTS_M) {
        flyInto(out, launch, a, heightM, COARSE_STEP_S);
        table[at++] = out.carryM;
        table[at++] = out.sideM;
      }
    }
  }
}
fillTable();
const ms = median(Array.from({ length: REPEATS }, () => cpuMs(fillTable)));
say(
  `a hole: ${BAG.length} options x ${DIRECTIONS} directions x ${HEIGHTS_M.length} heights in a 20 mph wind: ${ms.toFixed(0)} ms`,
);

/** A bag of 40 swings, each a good strike and four kinds of mishit, on a windy hole with heights: all that the day does to it, down every direction. */
const SWINGS = Array.from({ length: BAG.length }, (_, i) => {
  const carryM = 225 - 4.5 * i;
  const of = { weight: 0.2, acrossM: 0, sdAlongM: 6, sdAcrossM: 6, corr: 0 };
  const parts = [1, 0.85, 0.7, 0.55, 1.1].map((share) => Object.assign({ alongM: share * carryM }, of));
  return { option: { club: 'club', flight: { loftDeg: 10 + 3.8 * (i % 14) } }, pattern: { parts, rest: false } };
});
function reachAll(most: number): void {
  const reach = Reach.on({ ...REFERENCE, wind: { ...CALM, speedMps: STRONG_MPS, fromDeg: 30 } }, HEIGHTS_M.at(-1));
  for (const { option, pattern } of SWINGS) {
    const today = reach?.of(option, { ...pattern, parts: pattern.parts.slice(0, most) });
    for (let k = 0; k < DIRECTIONS; k++) {
      today?.face((2 * Math.PI * k) / DIRECTIONS);
      today?.faceRuns((2 * Math.PI * k) / DIRECTIONS);
    }
  }
}
for (const [parts, words] of [
  [1, 'its good strikes'],
  [5, 'all its five parts'],
] as const) {
  reachAll(parts);
  const reachMs = median(Array.from({ length: REPEATS }, () => cpuMs(() => reachAll(parts))));
  say(`reach of such a bag, ${words}, calibrated, flown and run out: ${reachMs.toFixed(0)} ms`);
}

const [first] = through;
if (first !== undefined) {
  const round = (): void => {
    for (let i = 0; i < 10; i++) for (const launch of BAG) flyInto(out, launch, first, 0, STEP_S);
  };
  say(`memory left behind: ${bytesAFlight(round, 10 * BAG.length).toFixed(0)} bytes a flight`);
}
