import { reachDown, type Arsenal, type Weapon } from './arsenal.ts';
import { WIDTHS_M } from './cloud.ts';
import { GREEN, OUT, PENALTY, TEE, FAIRWAY, type Raster } from './raster.ts';
import { puttsAt, type Putts } from './putts.ts';

/**
 * Strokes by distance alone, from each lie: the hole's problem on ground whose lies are mixed at each distance from the flag in the shares
 * the real hole has there. It carries the saw-tooth that the gaps of the bag put into strokes, so that what is left for the
 * lattices to carry is smooth. It is a control variate and a first guess, never an answer.
 */
export interface Baseline {
  readonly stepM: number;
  /** By raster code of the lie. */
  readonly strokes: ReadonlyMap<number, Float64Array>;
}

const STEP_M = 1;

export function baselineAt(table: Float64Array, distanceM: number): number {
  const x = distanceM / STEP_M;
  const last = table.length - 1;
  if (x >= last) return table[last]! + (x - last) * STEP_M * 0.01;
  const i = x | 0;
  return table[i]! + (x - i) * (table[i + 1]! - table[i]!);
}

/** Shares of green and of each playable lie at each whole metre from the flag; ground out, wet or unplayable is left aside. */
function shares(raster: Raster, lies: readonly number[], n: number): { green: Float64Array; lie: Float64Array[] } {
  const green = new Float64Array(n);
  const lie = lies.map(() => new Float64Array(n));
  const total = new Float64Array(n);
  for (let row = 0; row < raster.rows; row += 2) {
    const v = raster.box.v0 + (row + 0.5) * raster.stepM;
    for (let c = 0; c < raster.columns; c += 2) {
      const code = raster.surface[row * raster.columns + c]!;
      if (code === OUT || code === PENALTY) continue;
      const d = Math.min(
        n - 1,
        Math.round(Math.sqrt((raster.box.u0 + (c + 0.5) * raster.stepM) ** 2 + v * v) / STEP_M),
      );
      const k = lies.indexOf(code === TEE ? FAIRWAY : code);
      if (code === GREEN) green[d]!++;
      else if (k >= 0) lie[k]![d]!++;
      else continue;
      total[d]!++;
    }
  }
  const first = Math.max(0, lies.indexOf(FAIRWAY));
  for (let d = 0; d < n; d++) {
    if (total[d] === 0) {
      lie[first]![d] = 1;
      continue;
    }
    green[d]! /= total[d]!;
    for (const share of lie) share[d]! /= total[d]!;
  }
  return { green, lie };
}

/** Normal weights along the line of play at whole steps, for each of `WIDTHS_M`; the narrowest are a single one. */
const KERNELS = WIDTHS_M.map((sdM) => {
  const sd = sdM / STEP_M < 0.7 ? 0 : sdM / STEP_M;
  const reach = Math.ceil(3 * sd);
  const raw = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    sd === 0 ? 1 : Math.exp(-0.5 * ((i - reach) / sd) ** 2),
  );
  const sum = raw.reduce((a, b) => a + b, 0);
  return { sd, reach, weights: raw.map((w) => w / sum) };
});

/** Mean under a round cloud of each width, of a quantity that depends on the distance alone. Only entries lo..hi are remade. */
function blurred(rest: Float64Array, tables: Float64Array[], lo: number, hi: number): void {
  const n = rest.length;
  KERNELS.forEach(({ sd, reach, weights }, k) => {
    const table = tables[k]!;
    for (let d = Math.max(0, lo - reach); d <= Math.min(n - 1, hi + reach); d++) {
      // across the line of play by three places, along it by the whole kernel
      const side = Math.sqrt(d * d + 3 * sd * sd) - d;
      let total = 0;
      for (let i = -reach; i <= reach; i++) {
        const on = d + i < 0 ? -d - i : d + i;
        const x = Math.abs(d + i + side);
        const j = x | 0;
        const near = rest[j < n ? j : n - 1]!;
        const far = rest[j + 1 < n ? j + 1 : n - 1]!;
        total +=
          weights[i + reach]! * ((2 / 3) * rest[on < n ? on : n - 1]! + (1 / 3) * (near + (x - j) * (far - near)));
      }
      table[d] = total;
    }
  });
}

/** Strokes when the shot is aimed so that the good strike comes down on the line to the flag; the day is the one down the line of play. */
const straight = (w: Weapon, distanceM: number, means: readonly Float64Array[]): number => {
  const { weight, alongM, acrossM, width, first } = w.fine;
  const bias = w.pattern.parts[0]?.acrossM ?? 0;
  w.today?.face(0, 0, 0);
  const run = w.runsM[1] ?? 0;
  let sum = 0;
  for (let p = 0; p < width.length; p++) {
    const mean = means[width[p]!]!;
    const moved = w.today === undefined ? 0 : w.today.alongM[p]!;
    for (let i = first[p]!; i < first[p + 1]!; i++) {
      const on = distanceM - alongM[i]! - run - moved;
      const off = acrossM[i]! - bias;
      sum += weight[i]! * baselineAt(mean, Math.sqrt(on * on + off * off));
    }
  }
  return 1 + sum;
};

/** Places tried when a stroke is played off the line, to finish at a better distance. */
const OFF_LINE = 24;

/**
 * Strokes when the good strike is played at an angle, to finish at the best distance it can reach; mishits left aside. Only a player
 * whose bag fits a distance badly does that.
 */
const offLine = (w: Weapon, distanceM: number, means: readonly Float64Array[]): number => {
  const mean = means[w.fine.width[0]!]!;
  const reachM = reachDown(w, 0);
  const low = Math.abs(distanceM - reachM);
  const high = Math.min(distanceM + reachM, mean.length - 2);
  let best = Infinity;
  for (let i = 0; i <= OFF_LINE; i++) best = Math.min(best, baselineAt(mean, low + ((high - low) * i) / OFF_LINE));
  return 1 + best;
};
/** An off-line stroke must be this much better than every straight one to count. */
const OFF_LINE_GAIN = 0.5;

export function baselineOf(arsenal: Arsenal, putts: Putts, raster: Raster): Baseline {
  const lies = [...arsenal.keys()].filter((code) => code !== TEE);
  const { u0, u1, v0, v1 } = raster.box;
  const farthest = Math.hypot(Math.max(-u0, u1), Math.max(-v0, v1));
  const n = Math.ceil(farthest / STEP_M) + 40;
  const share = shares(raster, lies, n);
  const strokes = lies.map(() => Float64Array.from({ length: n }, (_, d) => 2.3 + 0.012 * d * STEP_M));
  const rest = new Float64Array(n);
  const means = WIDTHS_M.map(() => new Float64Array(n));
  const mix = (lo: number, hi: number): void => {
    for (let d = lo; d <= hi; d++) {
      rest[d] = share.green[d]! * puttsAt(putts, d * STEP_M);
      share.lie.forEach((s, k) => (rest[d]! += s[d]! * strokes[k]![d]!));
    }
    blurred(rest, means, lo, hi);
  };
  mix(0, n - 1);
  const block = 8;
  for (let pass = 0; pass < 2; pass++) {
    for (let lo = 0; lo < n; lo += block) {
      const hi = Math.min(n - 1, lo + block - 1);
      lies.forEach((code, k) => solveBlock(arsenal.get(code)!, strokes[k]!, means, lo, hi));
      mix(lo, hi);
    }
  }
  return { stepM: STEP_M, strokes: new Map(lies.map((code, k) => [code, strokes[k]!])) };
}

/** Strokes at the distances of a block: every metre near the flag, every other one farther out. */
function solveBlock(
  weapons: readonly Weapon[],
  table: Float64Array,
  means: readonly Float64Array[],
  lo: number,
  hi: number,
): void {
  const stride = lo < 136 ? 1 : 2;
  for (let d = lo; d <= hi; d += stride) {
    let best = Infinity;
    for (const w of weapons) {
      const reachM = reachDown(w, 0);
      if (reachM < 0.25 * d || reachM > 1.18 * d + 14) continue;
      const q = straight(w, d, means);
      if (q < best) best = q;
    }
    if (best === Infinity) for (const w of weapons) best = Math.min(best, straight(w, d, means));
    let off = Infinity;
    for (const w of weapons) off = Math.min(off, offLine(w, d, means));
    table[d] = Math.min(best, off + OFF_LINE_GAIN);
  }
  if (stride === 1) return;
  for (let d = lo - 1; d < hi; d += 2) if (d > 136) table[d] = (table[d - 1]! + table[d + 1]!) / 2;
  table[hi] = table[hi - 1]!;
}
