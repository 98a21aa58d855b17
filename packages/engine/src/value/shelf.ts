import {
  CLOUDS_HEAD_BYTES,
  CLOUDS_PARTS,
  GROUP_ACROSS,
  GROUP_ALONG,
  GROUP_BYTES,
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
  SUM_NEAR,
  SUM_WET,
  WET_BYTES,
} from '../kernel/layout.ts';
import { bytesOf, type Room } from '../kernel/room.ts';
import type { Arsenal, Weapon } from './arsenal.ts';
import type { Clouds } from './cloud.ts';
import type { Sheet } from './sheet.ts';
import type { WeaponToday } from './weaponToday.ts';

/** The widest cloud that is read from the sheet round the flag. */
const NEAR_ONLY = 5;
/** Room for the clouds of a stroke that is not in the arsenal; one with more is summed a piece at a time. */
const DESK_GROUPS = 512;

/** The clouds of a player's strokes, laid where the kernel reads them, with the levels that each part reads. */
export class Shelf {
  /** Where the kernel writes what a sum comes to. */
  readonly out: Float32Array;
  readonly outInts: Int32Array;
  readonly desk: number;
  private readonly wide: Sheet;
  private readonly near: Sheet;
  private readonly floats: Float32Array;
  private readonly ints: Int32Array;
  private readonly known = new Map<Clouds, number>();
  /** The clouds that lie on the desk whole. */
  private onDesk: Clouds | undefined;
  /** What was last asked for, and its address. */
  private last: Clouds | undefined;
  private lastAt = 0;

  constructor(room: Room, arsenal: Arsenal, wide: Sheet, near: Sheet) {
    this.wide = wide;
    this.near = near;
    this.floats = new Float32Array(room.kernel.buffer);
    this.ints = new Int32Array(room.kernel.buffer);
    const all = cloudsIn(arsenal);
    this.out = room.floats(outFloats(all.map(([, clouds]) => clouds)));
    this.outInts = new Int32Array(this.out.buffer, this.out.byteOffset, this.out.length);
    this.desk = room.floats(DESK_FLOATS).byteOffset;
    for (const [w, clouds] of all) {
      const at = room.floats(blockFloats(clouds)).byteOffset;
      this.write(at, w, clouds, 0, clouds.count);
      this.known.set(clouds, at);
    }
  }

  static bytes(arsenal: Arsenal): number {
    const all = cloudsIn(arsenal).map(([, clouds]) => clouds);
    const fixed = bytesOf(outFloats(all)) + bytesOf(DESK_FLOATS);
    return all.reduce((sum, clouds) => sum + bytesOf(blockFloats(clouds)), fixed);
  }

  /** Says within which box of the play frame clouds are read from the sheet round the flag, where they have levels there. */
  readNear(u0: number, u1: number, v0: number, v1: number): void {
    this.out.set([u0, u1, v0, v1], SUM_NEAR / 4);
  }

  /** The address of clouds that lie here whole; nought for others. */
  find(clouds: Clouds): number {
    // mostly the same as before
    if (clouds !== this.last) {
      this.last = clouds;
      this.lastAt = clouds === this.onDesk ? this.desk : (this.known.get(clouds) ?? 0);
    }
    return this.lastAt;
  }

  /** Lays clouds on the desk, from one of them on as many as there is room for; gives the first that is left. */
  lay(w: Weapon, clouds: Clouds, from: number): number {
    const most = 4 * (DESK_GROUPS - clouds.width.length);
    const to = Math.min(clouds.count, from + most);
    this.write(this.desk, w, clouds, from, to);
    this.onDesk = from === 0 && to === clouds.count ? clouds : undefined;
    this.last = undefined;
    return to;
  }

  /** Puts the parts of all clouds back to where they are on the reference day. */
  stand(): void {
    for (const [clouds, at] of this.known) this.move(at, noMove(clouds.width.length));
    this.onDesk = undefined;
    this.last = undefined;
  }

  /** Moves the parts of clouds that lie at an address to where the day takes them, down the line that was faced. */
  move(at: number, { alongM, acrossM }: Pick<WeaponToday, 'alongM' | 'acrossM'>): void {
    const { floats } = this;
    for (let p = 0, part = at + CLOUDS_HEAD_BYTES; p < alongM.length; p++, part += PART_BYTES) {
      floats[(part + PART_MOVED_ALONG) / 4] = alongM[p]!;
      floats[(part + PART_MOVED_ACROSS) / 4] = acrossM[p]!;
    }
  }

  private write(at: number, w: Weapon, clouds: Clouds, from: number, to: number): void {
    const { floats, ints } = this;
    const { weight, alongM, acrossM, first, width, sdM } = clouds;
    ints[(at + CLOUDS_PARTS) / 4] = width.length;
    let part = at + CLOUDS_HEAD_BYTES;
    let group = part + width.length * PART_BYTES;
    for (let p = 0; p < width.length; p++, part += PART_BYTES) {
      const begin = Math.max(from, first[p]!);
      const count = Math.max(0, Math.min(to, first[p + 1]!) - begin);
      const groups = count >> 2;
      const [far, near] = this.levels(w.runClass[p]!, width[p]!);
      ints[(part + PART_LEVEL) / 4] = far;
      ints[(part + PART_NEAR) / 4] = near;
      ints[(part + PART_GROUPS) / 4] = groups;
      ints[(part + PART_SINGLES) / 4] = count & 3;
      floats[(part + PART_MOVED_ALONG) / 4] = 0;
      floats[(part + PART_MOVED_ACROSS) / 4] = 0;
      floats[(part + PART_SD_M) / 4] = sdM[first[p]!] ?? 0;
      const further = w.furtherM[p]!;
      const single = group + groups * GROUP_BYTES;
      for (let i = 0; i < count; i++) {
        const n = begin + i;
        const grouped = i < 4 * groups;
        const at4 =
          (grouped ? group + GROUP_BYTES * (i >> 2) : single + SINGLE_BYTES * (i & 3)) / 4 + (grouped ? i & 3 : 0);
        floats[at4] = weight[n]!;
        floats[at4 + (grouped ? GROUP_ALONG : SINGLE_ALONG) / 4] = alongM[n]! + further;
        floats[at4 + (grouped ? GROUP_ACROSS : SINGLE_ACROSS) / 4] = acrossM[n]!;
      }
      group = single + (count & 3) * SINGLE_BYTES;
    }
  }

  /** Addresses of the level that clouds of a width read, and of the one round the flag, if they read there. */
  private levels(runClass: number, width: number): readonly [number, number] {
    const wide = this.wide.layers[runClass]!;
    const far = wide.levels[Math.max(0, width - NEAR_ONLY - wide.first)]!;
    const near = width <= NEAR_ONLY ? this.near.layers[runClass] : undefined;
    return [far, near === undefined || width < near.first ? 0 : near.levels[width - near.first]!];
  }
}

const noMove = (parts: number): Pick<WeaponToday, 'alongM' | 'acrossM'> => ({
  alongM: new Float64Array(parts),
  acrossM: new Float64Array(parts),
});

const cloudsIn = (arsenal: Arsenal): (readonly [Weapon, Clouds])[] =>
  [...arsenal.values()].flatMap((weapons) =>
    weapons
      .flatMap((w) => [w, ...(w.short ?? [])])
      .flatMap((w) => [w.fine, w.middle, w.coarse].map((clouds) => [w, clouds] as const)),
  );

const groupsOf = ({ first, width }: Clouds): number =>
  width.reduce((sum, _, p) => sum + Math.ceil((first[p + 1]! - first[p]!) / 4), 0);

const blockFloats = (clouds: Clouds): number =>
  (CLOUDS_HEAD_BYTES + clouds.width.length * PART_BYTES + groupsOf(clouds) * GROUP_BYTES) / 4;

/** Every part takes a group's room more than it needs, for its own head and for a group that is not full. */
const DESK_FLOATS = (CLOUDS_HEAD_BYTES + DESK_GROUPS * GROUP_BYTES) / 4;

/** Every cloud of a stroke may be wet. */
const outFloats = (all: readonly Clouds[]): number =>
  (SUM_WET + WET_BYTES * 4 * Math.max(DESK_GROUPS, ...all.map(groupsOf))) / 4;
