import {
  CLOUDS_HEAD_BYTES,
  CLOUDS_PARTS,
  GROUP_ACROSS,
  GROUP_ALONG,
  GROUP_BYTES,
  LEVEL_COLUMNS,
  LEVEL_DRY,
  LEVEL_OUT,
  LEVEL_PER_M,
  LEVEL_ROWS,
  LEVEL_U0,
  LEVEL_V0,
  LEVEL_WET,
  PART_BYTES,
  PART_GROUPS,
  PART_LEVEL,
  PART_MOVED_ACROSS,
  PART_MOVED_ALONG,
  PART_NEAR,
  PART_SD_M,
  PART_SINGLES,
  SINGLE_ACROSS,
  SINGLE_ALONG,
  SINGLE_BYTES,
  SUM_AHEAD,
  SUM_FEW,
  SUM_FEW_ACROSS,
  SUM_FEW_ALONG,
  SUM_NEAR,
  SUM_REPLAYED,
  SUM_SHARES,
  SUM_SPARE,
  SUM_WET,
  SUM_WET_COUNT,
  WET_ACROSS,
  WET_ALONG,
  WET_BYTES,
  WET_SD_M,
  WET_SHARE,
} from '../layout';

/** The mean over a stroke's clouds of what the ground under each costs. As `plainSum`. */
export function sum(clouds: usize, u: f64, v: f64, sin: f64, cos: f64, least: f32, out: usize): void {
  const zero = f32x4.splat(0);
  v128.store(out, zero, SUM_AHEAD);
  v128.store(out, zero, SUM_REPLAYED);
  v128.store(out, zero, SUM_FEW);
  v128.store(out, zero, SUM_FEW_ALONG);
  v128.store(out, zero, SUM_FEW_ACROSS);
  store<i32>(out, 0, SUM_WET_COUNT);
  const parts = load<i32>(clouds, CLOUDS_PARTS);
  let part = clouds + CLOUDS_HEAD_BYTES;
  let group = part + parts * PART_BYTES;
  for (let p = 0; p < parts; p++, part += PART_BYTES) {
    const single = group + load<i32>(part, PART_GROUPS) * GROUP_BYTES;
    const end = single + load<i32>(part, PART_SINGLES) * SINGLE_BYTES;
    const level = load<i32>(part, PART_LEVEL);
    const near = load<i32>(part, PART_NEAR);
    const movedA = f64(load<f32>(part, PART_MOVED_ALONG));
    const movedR = f64(load<f32>(part, PART_MOVED_ACROSS));
    const fromU = u + (movedA * sin + movedR * cos);
    const fromV = v + (movedA * cos - movedR * sin);
    if (near == 0) add(level, group, single, end, fromU, fromV, sin, cos, part, least, out);
    else {
      for (; group < single; group += GROUP_BYTES) {
        addEither(level, near, group, fromU, fromV, sin, cos, part, least, out);
      }
      for (; group < end; group += SINGLE_BYTES) {
        const a = f64(load<f32>(group, SINGLE_ALONG));
        const r = f64(load<f32>(group, SINGLE_ACROSS));
        const here = isNear(fromU + a * sin + r * cos, fromV + a * cos - r * sin, out) ? near : level;
        add(here, group, group, group + SINGLE_BYTES, fromU, fromV, sin, cos, part, least, out);
      }
    }
    group = end;
  }
  fold(out + SUM_AHEAD);
  fold(out + SUM_REPLAYED);
  fold(out + SUM_FEW);
  fold(out + SUM_FEW_ALONG);
  fold(out + SUM_FEW_ACROSS);
}

/** Puts the four shares of a figure together in the first. */
function fold(at: usize): void {
  const four = v128.load(at);
  const two = f32x4.add(four, v128.shuffle<i64>(four, four, 1, 0));
  store<f32>(at, f32x4.extract_lane(two, 0) + f32x4.extract_lane(two, 1));
}

function isNear(u: f64, v: f64, out: usize): bool {
  return (
    u > f64(load<f32>(out, SUM_NEAR)) &&
    u < f64(load<f32>(out, SUM_NEAR + 4)) &&
    v > f64(load<f32>(out, SUM_NEAR + 8)) &&
    v < f64(load<f32>(out, SUM_NEAR + 12))
  );
}

/** Four clouds, each by the near level when it stands in the near box. */
function addEither(
  level: usize,
  near: usize,
  group: usize,
  u: f64,
  v: f64,
  sin: f64,
  cos: f64,
  part: usize,
  least: f32,
  out: usize,
): void {
  const a = v128.load(group, GROUP_ALONG);
  const r = v128.load(group, GROUP_ACROSS);
  const s = f32x4.splat(f32(sin));
  const c = f32x4.splat(f32(cos));
  const x = f32x4.add(f32x4.splat(f32(u)), f32x4.add(f32x4.mul(a, s), f32x4.mul(r, c)));
  const y = f32x4.add(f32x4.splat(f32(v)), f32x4.sub(f32x4.mul(a, c), f32x4.mul(r, s)));
  const inside = v128.and(
    v128.and(f32x4.gt(x, v128.load32_splat(out, SUM_NEAR)), f32x4.lt(x, v128.load32_splat(out, SUM_NEAR + 4))),
    v128.and(f32x4.gt(y, v128.load32_splat(out, SUM_NEAR + 8)), f32x4.lt(y, v128.load32_splat(out, SUM_NEAR + 12))),
  );
  const mask = i32x4.bitmask(inside);
  const next = group + GROUP_BYTES;
  if (mask == 0) add(level, group, next, next, u, v, sin, cos, part, least, out);
  else if (mask == 15) add(near, group, next, next, u, v, sin, cos, part, least, out);
  else {
    const spare = out + SUM_SPARE;
    const w = v128.load(group);
    v128.store(spare, a, GROUP_ALONG);
    v128.store(spare, r, GROUP_ACROSS);
    v128.store(spare, v128.and(w, inside));
    add(near, spare, spare + GROUP_BYTES, spare + GROUP_BYTES, u, v, sin, cos, part, least, out);
    v128.store(spare, v128.andnot(w, inside));
    add(level, spare, spare + GROUP_BYTES, spare + GROUP_BYTES, u, v, sin, cos, part, least, out);
  }
}

/** Clouds of one width on one level: those in groups up to `single`, and the single ones up to `end`. */
function add(
  level: usize,
  group: usize,
  single: usize,
  end: usize,
  u: f64,
  v: f64,
  sin: f64,
  cos: f64,
  part: usize,
  least: f32,
  out: usize,
): void {
  const perM = f64(load<f32>(level, LEVEL_PER_M));
  const columns = load<i32>(level, LEVEL_COLUMNS);
  const rows = load<i32>(level, LEVEL_ROWS);
  const dry = <usize>load<i32>(level, LEVEL_DRY);
  const gone = <usize>load<i32>(level, LEVEL_OUT);
  const wet = <usize>load<i32>(level, LEVEL_WET);
  const pitch: usize = 4 * columns;
  const gu = f32((u - f64(load<f32>(level, LEVEL_U0))) * perM);
  const gv = f32((v - f64(load<f32>(level, LEVEL_V0))) * perM);
  const s = f32(sin * perM);
  const c = f32(cos * perM);
  let ahead = v128.load(out, SUM_AHEAD);
  let replayed = v128.load(out, SUM_REPLAYED);
  if (group < single) {
    const zero = f32x4.splat(0);
    const gu4 = f32x4.splat(gu);
    const gv4 = f32x4.splat(gv);
    const s4 = f32x4.splat(s);
    const c4 = f32x4.splat(c);
    const lastX = f32x4.splat(f32(columns - 1));
    const lastY = f32x4.splat(f32(rows - 1));
    const lastI = i32x4.splat(columns - 2);
    const lastJ = i32x4.splat(rows - 2);
    const columns4 = i32x4.splat(columns);
    for (; group < single; group += GROUP_BYTES) {
      const w = v128.load(group);
      const a = v128.load(group, GROUP_ALONG);
      const r = v128.load(group, GROUP_ACROSS);
      // in cells of the level, held to the grid
      const x = f32x4.max(zero, f32x4.min(lastX, f32x4.add(gu4, f32x4.add(f32x4.mul(a, s4), f32x4.mul(r, c4)))));
      const y = f32x4.max(zero, f32x4.min(lastY, f32x4.add(gv4, f32x4.sub(f32x4.mul(a, c4), f32x4.mul(r, s4)))));
      const i = i32x4.min_s(i32x4.trunc_sat_f32x4_s(x), lastI);
      const j = i32x4.min_s(i32x4.trunc_sat_f32x4_s(y), lastJ);
      const at = i32x4.shl(i32x4.add(i32x4.mul(j, columns4), i), 2);
      const fx = f32x4.sub(x, f32x4.convert_i32x4_s(i));
      const fy = f32x4.sub(y, f32x4.convert_i32x4_s(j));
      // bilinear weights of the four corners, turned from one vector a corner to one vector a cloud
      const high = f32x4.mul(w, fy);
      const low = f32x4.sub(w, high);
      const w10 = f32x4.mul(low, fx);
      const w00 = f32x4.sub(low, w10);
      const w11 = f32x4.mul(high, fx);
      const w01 = f32x4.sub(high, w11);
      const t0 = v128.shuffle<f32>(w00, w10, 0, 4, 1, 5);
      const t1 = v128.shuffle<f32>(w01, w11, 0, 4, 1, 5);
      const t2 = v128.shuffle<f32>(w00, w10, 2, 6, 3, 7);
      const t3 = v128.shuffle<f32>(w01, w11, 2, 6, 3, 7);
      const k0 = v128.shuffle<i64>(t0, t1, 0, 2);
      const k1 = v128.shuffle<i64>(t0, t1, 1, 3);
      const k2 = v128.shuffle<i64>(t2, t3, 0, 2);
      const k3 = v128.shuffle<i64>(t2, t3, 1, 3);
      const a0 = <usize>i32x4.extract_lane(at, 0);
      const a1 = <usize>i32x4.extract_lane(at, 1);
      const a2 = <usize>i32x4.extract_lane(at, 2);
      const a3 = <usize>i32x4.extract_lane(at, 3);
      ahead = f32x4.add(
        ahead,
        f32x4.add(
          f32x4.add(f32x4.mul(k0, corners(dry + a0, pitch)), f32x4.mul(k1, corners(dry + a1, pitch))),
          f32x4.add(f32x4.mul(k2, corners(dry + a2, pitch)), f32x4.mul(k3, corners(dry + a3, pitch))),
        ),
      );
      if (gone != 0) {
        replayed = f32x4.add(
          replayed,
          f32x4.add(
            f32x4.add(f32x4.mul(k0, corners(gone + a0, pitch)), f32x4.mul(k1, corners(gone + a1, pitch))),
            f32x4.add(f32x4.mul(k2, corners(gone + a2, pitch)), f32x4.mul(k3, corners(gone + a3, pitch))),
          ),
        );
      }
      if (wet == 0) continue;
      const c0 = corners(wet + a0, pitch);
      const c1 = corners(wet + a1, pitch);
      const c2 = corners(wet + a2, pitch);
      const c3 = corners(wet + a3, pitch);
      if (!v128.any_true(v128.or(v128.or(c0, c1), v128.or(c2, c3)))) continue;
      const d0 = f32x4.mul(k0, c0);
      const d1 = f32x4.mul(k1, c1);
      const d2 = f32x4.mul(k2, c2);
      const d3 = f32x4.mul(k3, c3);
      // one sum a cloud
      const e0 = f32x4.add(v128.shuffle<f32>(d0, d1, 0, 4, 1, 5), v128.shuffle<f32>(d0, d1, 2, 6, 3, 7));
      const e1 = f32x4.add(v128.shuffle<f32>(d2, d3, 0, 4, 1, 5), v128.shuffle<f32>(d2, d3, 2, 6, 3, 7));
      noteFour(f32x4.add(v128.shuffle<i64>(e0, e1, 0, 2), v128.shuffle<i64>(e0, e1, 1, 3)), group, part, least, out);
    }
  }
  const lastX = f32(columns - 1);
  const lastY = f32(rows - 1);
  for (; single < end; single += SINGLE_BYTES) {
    const w = load<f32>(single);
    const a = load<f32>(single, SINGLE_ALONG);
    const r = load<f32>(single, SINGLE_ACROSS);
    const x = max<f32>(0, min<f32>(lastX, gu + (a * s + r * c)));
    const y = max<f32>(0, min<f32>(lastY, gv + (a * c - r * s)));
    const i = min(i32(x), columns - 2);
    const j = min(i32(y), rows - 2);
    const at = <usize>((j * columns + i) << 2);
    const fx = f32x4.splat(x - f32(i));
    const fy = f32x4.splat(y - f32(j));
    const across = f32x4.add(f32x4(1, 0, 1, 0), f32x4.mul(fx, f32x4(-1, 1, -1, 1)));
    const up = f32x4.add(f32x4(1, 1, 0, 0), f32x4.mul(fy, f32x4(-1, -1, 1, 1)));
    const k = f32x4.mul(f32x4.mul(across, up), f32x4.splat(w));
    ahead = f32x4.add(ahead, f32x4.mul(k, corners(dry + at, pitch)));
    if (gone != 0) replayed = f32x4.add(replayed, f32x4.mul(k, corners(gone + at, pitch)));
    if (wet == 0) continue;
    const drowned = corners(wet + at, pitch);
    if (!v128.any_true(drowned)) continue;
    const d = f32x4.mul(k, drowned);
    const e = f32x4.add(d, v128.shuffle<i64>(d, d, 1, 0));
    note(f32x4.extract_lane(e, 0) + f32x4.extract_lane(e, 1), a, r, part, least, out);
  }
  v128.store(out, ahead, SUM_AHEAD);
  v128.store(out, replayed, SUM_REPLAYED);
}

/** The four samples about a place: two of a row and the two above them. */
function corners(at: usize, pitch: usize): v128 {
  return v128.load64_lane(at + pitch, v128.load64_zero(at), 1);
}

/** Wet shares of four clouds: those above `least` on the list, the others put together. */
function noteFour(shares: v128, group: usize, part: usize, least: f32, out: usize): void {
  const many = f32x4.gt(shares, f32x4.splat(least));
  const few = v128.andnot(shares, many);
  const along = f32x4.add(v128.load(group, GROUP_ALONG), v128.load32_splat(part, PART_MOVED_ALONG));
  const across = f32x4.add(v128.load(group, GROUP_ACROSS), v128.load32_splat(part, PART_MOVED_ACROSS));
  v128.store(out, f32x4.add(v128.load(out, SUM_FEW), few), SUM_FEW);
  v128.store(out, f32x4.add(v128.load(out, SUM_FEW_ALONG), f32x4.mul(few, along)), SUM_FEW_ALONG);
  v128.store(out, f32x4.add(v128.load(out, SUM_FEW_ACROSS), f32x4.mul(few, across)), SUM_FEW_ACROSS);
  let lanes = i32x4.bitmask(many);
  if (lanes == 0) return;
  v128.store(out, shares, SUM_SHARES);
  let count = load<i32>(out, SUM_WET_COUNT);
  for (; lanes != 0; lanes &= lanes - 1, count++) {
    const lane: usize = 4 * ctz(lanes);
    const share = load<f32>(out + lane, SUM_SHARES);
    list(count, share, load<f32>(group + lane, GROUP_ALONG), load<f32>(group + lane, GROUP_ACROSS), part, out);
  }
  store<i32>(out, count, SUM_WET_COUNT);
}

/** The wet share of one cloud. */
function note(share: f32, a: f32, r: f32, part: usize, least: f32, out: usize): void {
  if (share > least) {
    const count = load<i32>(out, SUM_WET_COUNT);
    list(count, share, a, r, part, out);
    store<i32>(out, count + 1, SUM_WET_COUNT);
  } else {
    const along = a + load<f32>(part, PART_MOVED_ALONG);
    const across = r + load<f32>(part, PART_MOVED_ACROSS);
    store<f32>(out, load<f32>(out, SUM_FEW) + share, SUM_FEW);
    store<f32>(out, load<f32>(out, SUM_FEW_ALONG) + share * along, SUM_FEW_ALONG);
    store<f32>(out, load<f32>(out, SUM_FEW_ACROSS) + share * across, SUM_FEW_ACROSS);
  }
}

/** A wet cloud on the list, where the day moved it to. */
function list(place: i32, share: f32, a: f32, r: f32, part: usize, out: usize): void {
  const at = out + SUM_WET + place * WET_BYTES;
  store<f32>(at, share, WET_SHARE);
  store<f32>(at, a + load<f32>(part, PART_MOVED_ALONG), WET_ALONG);
  store<f32>(at, r + load<f32>(part, PART_MOVED_ACROSS), WET_ACROSS);
  store<f32>(at, load<f32>(part, PART_SD_M), WET_SD_M);
}
