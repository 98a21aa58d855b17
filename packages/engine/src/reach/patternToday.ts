import type { Day } from '../day/day.ts';
import { inOneWind, inWinds, type Met } from './gusts.ts';
import type { NormalPart, Pattern } from '../player/option.ts';
import { runM } from '../player/run.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { type CarryToday, type ClubToday, NODE_M, RUN_EVERY, RUN_FIGURES, RUNS_ON, TURNS } from './clubToday.ts';

/** Height of a place of the frame that strokes are told in, metres. */
export type HeightAt = (u: number, v: number) => number;

/** Where a stroke is played from and which way, in a frame whose v axis has the bearing nought. */
export interface Line {
  readonly u: number;
  readonly v: number;
  readonly sin: number;
  readonly cos: number;
}

/** Two neighbouring carries that a part lies between. */
interface Between {
  readonly low: CarryToday;
  readonly high: CarryToday;
  readonly share: number;
}

/** The height of a landing depends on the landing: found by going round so often. */
const ROUNDS = 2;

/**
 * A pattern as the day moves it: each part by what the day does to its mean's carry, and nothing else, so spreads stay; where gusts are told, its parts are met by
 * several winds. `face` sets all figures for one aim line. A part that pitches runs on by the usual run and the model's difference between today and the reference day.
 */
export class PatternToday {
  /** With all its parts in each of the day's winds, one after another. */
  readonly pattern: Pattern;
  /** Metres that each part's mean lands farther along and across. */
  readonly alongM: Float64Array;
  readonly acrossM: Float64Array;
  /** Run of each part on each of `RUNS_ON`, three figures a part, and its direction: sine to the right of the aim line. */
  readonly runsM: Float64Array;
  readonly runSin: Float64Array;
  private readonly between: readonly Between[];
  private readonly usualM: Float64Array;
  /** Bearing that each part's wind blows to. */
  private readonly towardsRad: Float64Array;
  private readonly winds: number;
  private readonly heightsM: readonly number[];
  private readonly stuck: boolean;

  /** `clubs`: the club in each of the winds. */
  constructor(
    stated: Pattern,
    winds: readonly Met[],
    clubs: readonly ClubToday[],
    day: Day,
    heightsM: readonly number[],
  ) {
    const pattern = inWinds(stated, winds);
    const n = pattern.parts.length;
    const each = stated.parts.length;
    this.pattern = pattern;
    this.winds = winds.length;
    this.towardsRad = Float64Array.from(pattern.parts, (_, p) => {
      const { fromDeg } = winds[Math.floor(p / each)]!.day.wind;
      return (fromDeg + 180) * RAD_PER_DEG;
    });
    this.heightsM = heightsM;
    this.stuck = day.ground.plugging === true;
    this.alongM = new Float64Array(n);
    this.acrossM = new Float64Array(n);
    this.runsM = new Float64Array(RUNS_ON.length * n);
    this.runSin = new Float64Array(n);
    this.between = pattern.parts.map(({ alongM }, p) => {
      const club = clubs[Math.floor(p / each)]!;
      const at = Math.max(0, alongM) / NODE_M;
      const node = Math.floor(at);
      return { low: club.at(node), high: club.at(node + 1), share: at - node };
    });
    this.usualM = Float64Array.from(
      pattern.parts.flatMap((p) => RUNS_ON.map((surface) => (pattern.rest ? 0 : runM(p.alongM, surface)))),
    );
  }

  /** Sets where the parts land, and on level ground without `heightAt`; `bearingRad` is that of the frame's v axis plus the line's. */
  face(bearingRad: number, line?: Line, heightAt?: HeightAt): void {
    const level = (this.heightsM.length - 1) / 2;
    for (let p = 0; p < this.between.length; p++) {
      const b = this.between[p]!;
      const away = fromWind(this.towardsRad[p]! - bearingRad);
      const mirror = away < 0 ? -1 : 1;
      const at = (Math.abs(away) / Math.PI) * (TURNS - 1);
      const k = Math.min(TURNS - 2, Math.floor(at));
      const f = at - k;
      this.alongM[p] = moveAt(b, level, k, f, 0);
      this.acrossM[p] = mirror * moveAt(b, level, k, f, 1);
      if (line !== undefined && heightAt !== undefined && this.heightsM.length > 1)
        this.climb(p, b, k, f, mirror, line, heightAt);
    }
  }

  /** Moves a part's landing to the height of the ground there. */
  private climb(p: number, b: Between, k: number, f: number, mirror: number, line: Line, heightAt: HeightAt): void {
    const { u, v, sin, cos } = line;
    const { alongM, acrossM } = this.pattern.parts[p]!;
    const from = heightAt(u, v);
    const last = this.heightsM.length - 1;
    const least = this.heightsM[0]!;
    const step = (this.heightsM[last]! - least) / last;
    for (let round = 0; round < ROUNDS; round++) {
      const a = alongM + this.alongM[p]!;
      const r = acrossM + this.acrossM[p]!;
      const up = heightAt(u + a * sin + r * cos, v + a * cos - r * sin) - from;
      const at = Math.min(last, Math.max(0, (up - least) / step));
      const h = Math.min(last - 1, Math.max(1, Math.round(at)));
      const t = at - h;
      this.alongM[p] = curved(b, h, t, k, f, 0);
      this.acrossM[p] = mirror * curved(b, h, t, k, f, 1);
    }
  }

  /** Sets how far the parts run, and which way, down an aim line of this bearing. */
  faceRuns(bearingRad: number): void {
    if (this.pattern.rest) return;
    for (let p = 0; p < this.between.length; p++) {
      const away = fromWind(this.towardsRad[p]! - bearingRad);
      const mirror = away < 0 ? -1 : 1;
      const at = ((Math.abs(away) / Math.PI) * (TURNS - 1)) / RUN_EVERY;
      const k = Math.min((TURNS - 1) / RUN_EVERY - 1, Math.floor(at));
      const f = at - k;
      const { low, high, share } = this.between[p]!;
      const figure = (s: number): number =>
        (1 - share) * runAt(low.runs(), k, f, s) + share * runAt(high.runs(), k, f, s);
      RUNS_ON.forEach((_, s) => {
        const i = RUNS_ON.length * p + s;
        this.runsM[i] = this.stuck ? 0 : Math.max(0, this.usualM[i]! + figure(s));
      });
      this.runSin[p] = mirror * figure(RUNS_ON.length);
    }
  }

  /** The pattern as it lands down the line that was last faced. */
  landing(): Pattern {
    const parts = this.pattern.parts.map((part, p): NormalPart => ({
      ...part,
      alongM: part.alongM + this.alongM[p]!,
      acrossM: part.acrossM + this.acrossM[p]!,
    }));
    return { ...this.pattern, parts };
  }

  /** The same with each part of the stated pattern whole, wherever the winds take it. */
  landingWhole(): Pattern {
    return inOneWind(this.landing(), this.winds);
  }
}

/** An angle from -pi to pi. */
function fromWind(angle: number): number {
  const turn = 2 * Math.PI;
  return angle - turn * Math.round(angle / turn);
}

/** The same between heights: the parabola through three of them, `t` steps from the middle one. */
function curved(b: Between, height: number, t: number, k: number, f: number, figure: 0 | 1): number {
  const low = moveAt(b, height - 1, k, f, figure);
  const middle = moveAt(b, height, k, f, figure);
  const high = moveAt(b, height + 1, k, f, figure);
  return middle + (t * (high - low)) / 2 + (t * t * (high - 2 * middle + low)) / 2;
}

/** Figure `along` (0) or `across` (1) between two carries and two turns, at one height. */
function moveAt({ low, high, share }: Between, height: number, k: number, f: number, figure: 0 | 1): number {
  const i = 2 * (height * TURNS + k) + figure;
  const a = low.moves;
  const b = high.moves;
  const lower = a[i]! + f * (a[i + 2]! - a[i]!);
  return lower + share * (b[i]! + f * (b[i + 2]! - b[i]!) - lower);
}

const runAt = (rows: Float64Array, k: number, f: number, s: number): number => {
  const i = RUN_FIGURES * k + s;
  return rows[i]! + f * (rows[i + RUN_FIGURES]! - rows[i]!);
};
