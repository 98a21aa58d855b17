import {
  CLOUDS_HEAD_BYTES,
  CLOUDS_PARTS,
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
  SINGLE_BYTES,
  SUM_AHEAD,
  SUM_FEW,
  SUM_FEW_ACROSS,
  SUM_FEW_ALONG,
  SUM_NEAR,
  SUM_REPLAYED,
  SUM_SPARE,
  SUM_WET,
  SUM_WET_COUNT,
  WET_ACROSS,
  WET_ALONG,
  WET_BYTES,
  WET_SD_M,
  WET_SHARE,
} from './layout.ts';

/** `Kernel.sum` in TypeScript. */
export function plainSum(
  room: Float32Array,
  ints: Int32Array,
  clouds: number,
  u: number,
  v: number,
  sin: number,
  cos: number,
  least: number,
  out: number,
): void {
  room.fill(0, (out + SUM_AHEAD) / 4, (out + SUM_SPARE) / 4);
  const [nearU0 = 0, nearU1 = 0, nearV0 = 0, nearV1 = 0] = room.subarray((out + SUM_NEAR) / 4);
  const parts = ints[(clouds + CLOUDS_PARTS) >> 2]!;
  let part = clouds + CLOUDS_HEAD_BYTES;
  let group = (part + parts * PART_BYTES) >> 2;
  let ahead = 0;
  let replayed = 0;
  for (let p = 0; p < parts; p++, part += PART_BYTES) {
    const far = ints[(part + PART_LEVEL) >> 2]!;
    const near = ints[(part + PART_NEAR) >> 2]!;
    const sdM = room[(part + PART_SD_M) >> 2]!;
    const movedA = room[(part + PART_MOVED_ALONG) >> 2]!;
    const movedR = room[(part + PART_MOVED_ACROSS) >> 2]!;
    const fromU = u + (movedA * sin + movedR * cos);
    const fromV = v + (movedA * cos - movedR * sin);
    const grouped = 4 * ints[(part + PART_GROUPS) >> 2]!;
    const count = grouped + ints[(part + PART_SINGLES) >> 2]!;
    const single = group + grouped * (GROUP_BYTES / 16);
    for (let n = 0; n < count; n++) {
      const k = n < grouped ? group + (GROUP_BYTES / 4) * (n >> 2) + (n & 3) : single + (SINGLE_BYTES / 4) * (n & 3);
      const step = n < grouped ? 4 : 1;
      const w = room[k]!;
      const a = room[k + step]!;
      const r = room[k + 2 * step]!;
      const x = fromU + a * sin + r * cos;
      const y = fromV + a * cos - r * sin;
      const level = near !== 0 && x > nearU0 && x < nearU1 && y > nearV0 && y < nearV1 ? near : far;
      const perM = room[(level + LEVEL_PER_M) >> 2]!;
      const columns = ints[(level + LEVEL_COLUMNS) >> 2]!;
      const rows = ints[(level + LEVEL_ROWS) >> 2]!;
      const gx = Math.max(0, Math.min(columns - 1, (x - room[(level + LEVEL_U0) >> 2]!) * perM));
      const gy = Math.max(0, Math.min(rows - 1, (y - room[(level + LEVEL_V0) >> 2]!) * perM));
      const i = Math.min(columns - 2, gx | 0);
      const j = Math.min(rows - 2, gy | 0);
      const at = j * columns + i;
      // bilinear weights, shared by all that is read here
      const w11 = w * (gx - i) * (gy - j);
      const w10 = w * (gx - i) - w11;
      const w01 = w * (gy - j) - w11;
      const w00 = w - w10 - w01 - w11;
      const dry = (ints[(level + LEVEL_DRY) >> 2]! >> 2) + at;
      const up = dry + columns;
      ahead += w00 * room[dry]! + w10 * room[dry + 1]! + w01 * room[up]! + w11 * room[up + 1]!;
      const gone = ints[(level + LEVEL_OUT) >> 2]!;
      if (gone !== 0) {
        const low = (gone >> 2) + at;
        const high = low + columns;
        replayed += w00 * room[low]! + w10 * room[low + 1]! + w01 * room[high]! + w11 * room[high + 1]!;
      }
      const wet = ints[(level + LEVEL_WET) >> 2]!;
      if (wet !== 0) {
        const low = (wet >> 2) + at;
        const high = low + columns;
        const share = w00 * room[low]! + w10 * room[low + 1]! + w01 * room[high]! + w11 * room[high + 1]!;
        if (share > 0) note(room, ints, out, share, least, a + movedA, r + movedR, sdM);
      }
    }
    group = single + (count - grouped) * (SINGLE_BYTES / 4);
  }
  room[(out + SUM_AHEAD) >> 2] = ahead;
  room[(out + SUM_REPLAYED) >> 2] = replayed;
}

/** The wet share of one cloud: on the list, or put together with the other few. */
function note(
  room: Float32Array,
  ints: Int32Array,
  out: number,
  share: number,
  least: number,
  along: number,
  across: number,
  sdM: number,
): void {
  if (share > least) {
    const at = out + SUM_WET + WET_BYTES * ints[(out + SUM_WET_COUNT) >> 2]!++;
    room[(at + WET_SHARE) >> 2] = share;
    room[(at + WET_ALONG) >> 2] = along;
    room[(at + WET_ACROSS) >> 2] = across;
    room[(at + WET_SD_M) >> 2] = sdM;
  } else {
    room[(out + SUM_FEW) >> 2]! += share;
    room[(out + SUM_FEW_ALONG) >> 2]! += share * along;
    room[(out + SUM_FEW_ACROSS) >> 2]! += share * across;
  }
}
