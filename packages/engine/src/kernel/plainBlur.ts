import { lineFloats } from './blurWork.ts';
import { MOST_TAPS } from './layout.ts';

/** `Kernel.blur` in TypeScript. */
export function plainBlur(
  room: Float32Array,
  from: number,
  fromColumns: number,
  fromRows: number,
  to: number,
  toColumns: number,
  taps: number,
  first: number,
  halves: boolean,
  c0: number,
  c1: number,
  r0: number,
  r1: number,
  work: number,
): void {
  const width = c1 - c0 + 1;
  const scale = halves ? 2 : 1;
  // in fours, the last ones with weights of nought
  const fours = 4 * Math.ceil(taps / 4);
  const weights = new Float64Array(fours);
  weights.set(room.subarray(work / 4, work / 4 + taps));
  const line = work / 4 + MOST_TAPS;
  const across = line + 2 * lineFloats(fromColumns);
  const top = Math.max(0, scale * r0 + first);
  const bottom = Math.min(fromRows - 1, scale * r1 + first + taps - 1);
  const start = scale * c0 + first;
  const span = scale * (width - 1) + fours;
  const sum = new Float64Array(width);
  for (let r = top; r <= bottom; r++) {
    const row = from / 4 + r * fromColumns;
    for (let i = 0; i < span; i++) room[line + i] = room[row + Math.min(fromColumns - 1, Math.max(0, start + i))]!;
    sum.fill(0);
    for (let k = 0; k < fours; k += 4) {
      const at = line + k;
      addFour(room, sum, scale, at, at + 1, at + 2, at + 3, weights, k);
    }
    room.set(sum, across + (r - top) * width);
  }
  for (let r = r0; r <= r1; r++) {
    const place = (k: number): number =>
      across + Math.min(bottom - top, Math.max(0, scale * r + first + k - top)) * width;
    sum.fill(0);
    for (let k = 0; k < fours; k += 4) {
      addFour(room, sum, 1, place(k), place(k + 1), place(k + 2), place(k + 3), weights, k);
    }
    room.set(sum, to / 4 + r * toColumns + c0);
  }
}

/** Adds four taps, from the k-th on, to a row of outputs; each tap reads on from its own place, `step` inputs an output. */
function addFour(
  room: Float32Array,
  sum: Float64Array,
  step: number,
  i0: number,
  i1: number,
  i2: number,
  i3: number,
  weights: Float64Array,
  k: number,
): void {
  const w0 = weights[k]!;
  const w1 = weights[k + 1]!;
  const w2 = weights[k + 2]!;
  const w3 = weights[k + 3]!;
  for (let c = 0, i = 0; c < sum.length; c++, i += step) {
    sum[c]! += w0 * room[i0 + i]! + w1 * room[i1 + i]! + w2 * room[i2 + i]! + w3 * room[i3 + i]!;
  }
}
