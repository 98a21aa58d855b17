import type { Option, Pattern, PlayerModel } from '../player/option.ts';
import { runM } from '../player/run.ts';
import { LIES, SURFACES, type Lie } from '../quantity/lies.ts';
import { RUNS_ON } from '../reach/clubToday.ts';
import type { HeightAt } from '../reach/patternToday.ts';
import type { Reach } from '../reach/reach.ts';
import { fromLie } from '../player/pattern.ts';
import { cloudsOf, COARSE, FINE, MIDDLE, type Clouds, type Split } from './cloud.ts';
import { BUNKER, FAIRWAY, PENALTY, RECOVERY, ROUGH, TEE } from './raster.ts';
import { WeaponToday } from './weaponToday.ts';

/** The lies that a ball can be played from, as raster codes. */
export const LIE_CODES: { readonly [L in Lie]: number } = {
  tee: TEE,
  fairway: FAIRWAY,
  rough: ROUGH,
  bunker: BUNKER,
  recovery: RECOVERY,
  penalty: PENALTY,
};

/** The lie that each raster code is; none for green and out of bounds. */
export const LIE_OF: readonly (Lie | undefined)[] = SURFACES.map((_, code) =>
  LIES.find((lie) => LIE_CODES[lie] === code),
);

/** One stroke a player owns, from one lie, ready to be evaluated. */
export interface Weapon {
  /** Place in `player.options`; -1 for a stroke that is only asked about. */
  readonly option: number;
  readonly pattern: Pattern;
  readonly fine: Clouds;
  readonly middle: Clouds;
  readonly coarse: Clouds;
  /** Distance of the good strike's mean at rest on fairway, metres: for choosing what to try. */
  readonly reachM: number;
  /** Run of each part on each of `RUNS_ON`, metres: three figures a part, all nought for a pattern of rest. */
  readonly runsM: Float64Array;
  /** Run class of each part, and how much farther than its class each part runs on a fairway, metres. */
  readonly runClass: Uint8Array;
  readonly furtherM: Float64Array;
  /** What the day does to it, by its line; `undefined` on the reference day. */
  today: WeaponToday | undefined;
  /** A short shot that is not stated, where the ball is ever harder to stop: see `ShortSide`. */
  readonly short?: readonly Weapon[];
}

/** What strokes of a hole are made ready with. */
export interface Making {
  /** Whether any penalty area is on the map. */
  readonly water: boolean;
  /** Where strokes go on another day than the reference day, the bearing of the frame's v axis, and the ground's heights unless it is level. */
  readonly reach: Reach | undefined;
  readonly axisRad: number;
  readonly heightAt: HeightAt | undefined;
}

type PlayedOption = Pick<Option, 'club' | 'flight'>;

const todayOf = (
  option: PlayedOption,
  pattern: Pattern,
  { reach, axisRad, heightAt }: Making,
  usualRunsM?: Float64Array,
): WeaponToday | undefined => reach && new WeaponToday(reach.of(option, pattern), axisRad, heightAt, usualRunsM);

/** Takes another day into strokes that were made ready for one before; their classes of run stay, each keeps its own length on a fairway. */
export function takeDay(arsenal: Arsenal, player: PlayerModel, making: Making): void {
  const all = [...arsenal.values()].flat().flatMap((w) => [w, ...(w.short ?? [])]);
  for (const w of new Set(all)) w.today = todayOf(player.options[w.option]!, w.pattern, making, w.runsM);
}

/** Distance from the flag that a stroke's good strike goes, played down a line of the play frame. */
export const reachDown = (w: Weapon, bearing: number): number =>
  w.today === undefined ? w.reachM : w.reachM + w.today.furtherM(bearing);

/** A stroke worth a closer look from some state: bearing in the play frame, and the strokes last found for it. */
export interface Lead {
  readonly weapon: Weapon;
  bearing: number;
  strokes: number;
}

/** All that a player can play, by the raster code of the lie. */
export type Arsenal = ReadonlyMap<number, readonly Weapon[]>;

/** A pattern's parts, in all the winds of the day. */
const partsToday = (pattern: Pattern, today: WeaponToday | undefined): Pattern['parts'] =>
  today === undefined ? pattern.parts : today.pattern.pattern.parts;

/** Runs on `RUNS_ON`, metres. */
export type Runs = readonly [number, number, number];

const NO_RUN: Runs = [0, 0, 0];

const runsOf = (pattern: Pattern, today?: WeaponToday): Runs[] =>
  partsToday(pattern, today).map((part, p) => {
    if (pattern.rest) return NO_RUN;
    const usual = (surface: (typeof RUNS_ON)[number], s: number): number =>
      today === undefined ? runM(part.alongM, surface) : today.meanRunsM[RUNS_ON.length * p + s]!;
    return RUNS_ON.map(usual) as [number, number, number];
  });

/** Runs up to so many times the shortest of a class, or so much longer, are solved for together; each keeps its own length on a fairway. */
const SAME_RUN_TIMES = 1.4;
const SAME_RUN_M = 0.5;

/**
 * The different runs of a player's patterns, drawn together into a few classes, each with the mean run of its balls: a club's good strikes, which are most of them, keep
 * about their own. The first class is none at all.
 */
export function runClassesOf(player: PlayerModel, making: Making): Runs[] {
  const all = player.options
    .flatMap((o) =>
      Object.values(o.byLie).flatMap((pattern) => {
        const runs = runsOf(pattern, todayOf(o, pattern, making));
        return runs.map((run, p) => ({ run, share: pattern.parts[p % pattern.parts.length]!.weight }));
      }),
    )
    .filter(({ run }) => run[1] > 0)
    .sort((a, b) => a.run[1] - b.run[1]);
  const classes: Runs[] = [NO_RUN];
  for (let from = 0; from < all.length;) {
    const least = all[from]!.run[1];
    const most = Math.max(SAME_RUN_TIMES * least, least + SAME_RUN_M);
    let to = from;
    while (to < all.length && all[to]!.run[1] <= most) to++;
    const together = all.slice(from, to);
    const balls = together.reduce((sum, { share }) => sum + share, 0);
    const mean = (k: 0 | 1 | 2): number => together.reduce((sum, { run, share }) => sum + share * run[k], 0) / balls;
    classes.push([mean(0), mean(1), mean(2)]);
    from = to;
  }
  return classes;
}

/** Where a ball crossed into water depends on its own line, so clouds stay small where there is water. */
const WIDEST_BY_WATER_M = 6;

/** `option` is the place in `player.options`; -1 for one that is only asked about. */
export function weaponOf(
  option: number,
  played: PlayedOption,
  pattern: Pattern,
  making: Making,
  classes: readonly Runs[],
  rules: 'all' | 'fine only' = 'all',
): Weapon {
  const { water } = making;
  const today = todayOf(played, pattern, making);
  const parts = partsToday(pattern, today);
  const fine = cloudsOf(parts, water ? { ...FINE, widestM: WIDEST_BY_WATER_M } : FINE);
  const other = (split: Split): Clouds => (rules === 'all' ? cloudsOf(parts, split) : fine);
  const middle = other(water ? { ...MIDDLE, widestM: 1.5 * WIDEST_BY_WATER_M } : MIDDLE);
  const coarse = other(COARSE);
  const runs = runsOf(pattern, today);
  const nearest = (r: Runs): number =>
    classes.reduce((best, c, k) => (Math.abs(c[1] - r[1]) < Math.abs(classes[best]![1] - r[1]) ? k : best), 0);
  const runClass = Uint8Array.from(runs, (r) => (r[1] === 0 ? 0 : Math.max(1, nearest(r))));
  return {
    option,
    pattern,
    fine,
    middle,
    coarse,
    reachM: (pattern.parts[0]?.alongM ?? 0) + (runs[0]?.[1] ?? 0),
    today,
    runsM: Float64Array.from(runs.flat()),
    runClass: classes.length > 1 ? runClass : new Uint8Array(runs.length),
    furtherM: Float64Array.from(runs, (r, p) => r[1] - (classes[classes.length > 1 ? runClass[p]! : 0]?.[1] ?? 0)),
  };
}

/**
 * What it takes to stop a ball short: spread of length and share of mishits, as multiples of those with green to work with. Our assumption: from
 * carrying more than half of the way, seven tenths of it, and nearly all of it.
 */
const SHORT_SIDED = [
  { along: 1.12, mishit: 1.05 },
  { along: 1.3, mishit: 1.15 },
  { along: 1.5, mishit: 1.3 },
] as const;

/** The stroke as it is played from a place so hard to stop from. */
export const shortSided = (w: Weapon, hard: number): Weapon => (hard === 0 ? w : (w.short?.[hard - 1] ?? w));

export function arsenalOf(player: PlayerModel, making: Making, classes: readonly Runs[]): Arsenal {
  const all = new Map<number, Weapon[]>();
  for (const [lie, code] of Object.entries(LIE_CODES) as [Lie, number][]) {
    const weapons = player.options.flatMap((o, i) => {
      const pattern = o.byLie[lie];
      if (pattern === undefined) return [];
      const weapon = weaponOf(i, o, pattern, making, classes);
      if (o.evidence !== 'short game') return [weapon];
      const short = SHORT_SIDED.map((effect) => {
        const parts = fromLie(pattern.parts, { distance: 1, across: 1, ...effect });
        return weaponOf(i, o, { ...pattern, parts }, making, classes);
      });
      return [{ ...weapon, short }];
    });
    if (weapons.length > 0) all.set(code, weapons);
  }
  return all;
}

/** For each run class the narrowest cloud that any stroke has in it: place in `WIDTHS_M`. */
export function narrowestOf(arsenal: Arsenal, classes: readonly Runs[]): Uint8Array {
  const narrowest = new Uint8Array(classes.length).fill(255);
  for (const weapons of arsenal.values()) {
    for (const { fine, coarse, runClass } of weapons) {
      runClass.forEach((k, p) => (narrowest[k] = Math.min(narrowest[k]!, fine.width[p]!, coarse.width[p]!)));
    }
  }
  return narrowest;
}

/** For each run class the widest cloud that these strokes have in it: place in `WIDTHS_M`; -1 where they have none. */
export function widestOf(weapons: Iterable<Weapon>, classes: readonly Runs[]): Int8Array {
  const widest = new Int8Array(classes.length).fill(-1);
  for (const weapon of weapons) {
    for (const { fine, middle, coarse, runClass } of [weapon, ...(weapon.short ?? [])]) {
      runClass.forEach(
        (k, p) => (widest[k] = Math.max(widest[k]!, fine.width[p]!, middle.width[p]!, coarse.width[p]!)),
      );
    }
  }
  return widest;
}
