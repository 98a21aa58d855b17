import { BLOCK, MOST_TAPS } from '../layout';

/** Bytes of a block of columns. */
const BLOCK_BYTES: usize = 4 * BLOCK;

/**
 * Separable blurring of a patch of one grid on to another of the same step, or (`halves`) of twice the step. Input rows are blurred
 * across into rows of `work`; those are blurred down. Addresses and shapes as in `plainBlur`.
 */
export function blur(
  from: usize,
  fromColumns: i32,
  fromRows: i32,
  to: usize,
  toColumns: i32,
  taps: i32,
  first: i32,
  halves: bool,
  c0: i32,
  c1: i32,
  r0: i32,
  r1: i32,
  work: usize,
): void {
  const width = c1 - c0 + 1;
  const stride: usize = 4 * ((width + BLOCK - 1) & -BLOCK);
  const weights = work;
  const line = weights + 4 * MOST_TAPS;
  // room for the longest line, and for the second of two half lines behind the first
  const half = line + 4 * ((width + MOST_TAPS + BLOCK + 3) & -4);
  const across = line + 8 * ((width + MOST_TAPS + BLOCK + 3) & -4);
  const scale = halves ? 2 : 1;
  const top = max(0, scale * r0 + first);
  const bottom = min(fromRows - 1, scale * r1 + first + taps - 1);
  const start = scale * c0 + first;
  const span = scale * (width - 1) + taps;
  for (let r = top; r <= bottom; r++) {
    const row = from + 4 * r * fromColumns;
    const out = across + <usize>(r - top) * stride;
    if (halves) {
      copyHalf(row, fromColumns, start, (span + 1) >> 1, line);
      copyHalf(row, fromColumns, start + 1, span >> 1, half);
      for (let x: usize = 0; x < stride; x += BLOCK_BYTES) blockOfHalves(line + x, half + x, weights, taps, out + x);
    } else {
      copy(row, fromColumns, start, span, line);
      for (let x: usize = 0; x < stride; x += BLOCK_BYTES) blockOf(line + x, weights, taps, out + x);
    }
  }
  for (let r = r0; r <= r1; r++) {
    down(across, stride, scale * r + first - top, bottom - top, weights, taps, to + 4 * (r * toColumns + c0), width);
  }
}

/** Copies `count` places of a row from column `start` on; columns beyond the row are as its ends. */
function copy(row: usize, columns: i32, start: i32, count: i32, line: usize): void {
  const last = columns - 1;
  let i = 0;
  const lead = min(count, -start);
  for (; i < lead; i++) store<f32>(line + 4 * i, load<f32>(row));
  const inside = min(count, columns - start);
  for (; i + 4 <= inside; i += 4) v128.store(line + 4 * i, v128.load(row + 4 * (start + i)));
  for (; i < count; i++) store<f32>(line + 4 * i, load<f32>(row + 4 * min(last, start + i)));
}

/** The same with every other place. */
function copyHalf(row: usize, columns: i32, start: i32, count: i32, line: usize): void {
  const last = columns - 1;
  for (let i = 0, c = start; i < count; i++, c += 2) {
    if (c >= 0 && i + 4 <= count && c + 7 <= last) {
      const a = v128.load(row + 4 * c);
      const b = v128.load(row + 4 * c, 16);
      v128.store(line + 4 * i, v128.shuffle<f32>(a, b, 0, 2, 4, 6));
      i += 3;
      c += 6;
    } else store<f32>(line + 4 * i, load<f32>(row + 4 * max(0, min(last, c))));
  }
}

/** A block of outputs from a line of inputs. */
function blockOf(line: usize, weights: usize, taps: i32, out: usize): void {
  let s0 = f32x4.splat(0);
  let s1 = f32x4.splat(0);
  let s2 = f32x4.splat(0);
  let s3 = f32x4.splat(0);
  for (let k = 0; k < taps; k++) {
    const w = v128.load32_splat(weights + 4 * k);
    const at = line + 4 * k;
    s0 = f32x4.add(s0, f32x4.mul(w, v128.load(at)));
    s1 = f32x4.add(s1, f32x4.mul(w, v128.load(at, 16)));
    s2 = f32x4.add(s2, f32x4.mul(w, v128.load(at, 32)));
    s3 = f32x4.add(s3, f32x4.mul(w, v128.load(at, 48)));
  }
  v128.store(out, s0);
  v128.store(out, s1, 16);
  v128.store(out, s2, 32);
  v128.store(out, s3, 48);
}

/** A block of outputs that lie at every other input: even taps read one half line, odd ones the other. */
function blockOfHalves(even: usize, odd: usize, weights: usize, taps: i32, out: usize): void {
  let s0 = f32x4.splat(0);
  let s1 = f32x4.splat(0);
  let s2 = f32x4.splat(0);
  let s3 = f32x4.splat(0);
  for (let k = 0; k < taps; k++) {
    const w = v128.load32_splat(weights + 4 * k);
    const at = ((k & 1) == 0 ? even : odd) + 4 * (k >> 1);
    s0 = f32x4.add(s0, f32x4.mul(w, v128.load(at)));
    s1 = f32x4.add(s1, f32x4.mul(w, v128.load(at, 16)));
    s2 = f32x4.add(s2, f32x4.mul(w, v128.load(at, 32)));
    s3 = f32x4.add(s3, f32x4.mul(w, v128.load(at, 48)));
  }
  v128.store(out, s0);
  v128.store(out, s1, 16);
  v128.store(out, s2, 32);
  v128.store(out, s3, 48);
}

/** One row of outputs from the rows of `across` from `top` on; rows before the first are as the first, beyond the last as the last. */
function down(
  across: usize,
  stride: usize,
  top: i32,
  last: i32,
  weights: usize,
  taps: i32,
  out: usize,
  width: i32,
): void {
  for (let c = 0; c < width; c += BLOCK) {
    let s0 = f32x4.splat(0);
    let s1 = f32x4.splat(0);
    let s2 = f32x4.splat(0);
    let s3 = f32x4.splat(0);
    const column = across + 4 * c;
    for (let k = 0; k < taps; k++) {
      const w = v128.load32_splat(weights + 4 * k);
      const at = column + <usize>max(0, min(last, top + k)) * stride;
      s0 = f32x4.add(s0, f32x4.mul(w, v128.load(at)));
      s1 = f32x4.add(s1, f32x4.mul(w, v128.load(at, 16)));
      s2 = f32x4.add(s2, f32x4.mul(w, v128.load(at, 32)));
      s3 = f32x4.add(s3, f32x4.mul(w, v128.load(at, 48)));
    }
    const left = width - c;
    const at = out + 4 * c;
    put(at, s0, left);
    put(at + 16, s1, left - 4);
    put(at + 32, s2, left - 8);
    put(at + 48, s3, left - 12);
  }
}

/** Stores as many of four figures as are left to store. */
function put(at: usize, four: v128, left: i32): void {
  if (left >= 4) {
    v128.store(at, four);
    return;
  }
  if (left > 0) store<f32>(at, f32x4.extract_lane(four, 0));
  if (left > 1) store<f32>(at, f32x4.extract_lane(four, 1), 4);
  if (left > 2) store<f32>(at, f32x4.extract_lane(four, 2), 8);
}
