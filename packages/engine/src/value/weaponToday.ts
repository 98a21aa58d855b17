import { RUNS_ON } from '../reach/clubToday.ts';
import type { HeightAt, PatternToday } from '../reach/patternToday.ts';

/** Bearings that a stroke's figures are kept for: every 5 degrees of the play frame; between them they are straight to within 3 cm. */
const BEARINGS = 72;
const PER_RAD = BEARINGS / (2 * Math.PI);
/** The run on a fairway among `RUNS_ON`. */
const ON_FAIRWAY = 1;

/** What the day does to one stroke of a hole, in the play frame. `alongM` and `acrossM` are those of the line that was faced last. */
export class WeaponToday {
  /** Run of each part on each of `RUNS_ON`, mean over all directions: what its run classes are made from. */
  readonly meanRunsM: Float64Array;
  /** How much farther along and across each part comes to rest on a fairway than the reference pattern and the mean run have it. */
  readonly alongM: Float64Array;
  readonly acrossM: Float64Array;
  readonly pattern: PatternToday;
  private readonly axisRad: number;
  private readonly heightAt: HeightAt | undefined;
  /** By bearing and part, along and across: what level ground and the run add, and the run's share of it. */
  private readonly level: Float64Array;
  private readonly running: Float64Array;

  /** `usualRunsM`: the runs that the stroke was made ready with, when it was for another day; `meanRunsM` unless said. */
  constructor(pattern: PatternToday, axisRad: number, heightAt: HeightAt | undefined, usualRunsM?: Float64Array) {
    this.pattern = pattern;
    this.axisRad = axisRad;
    this.heightAt = heightAt;
    const n = pattern.alongM.length;
    this.alongM = new Float64Array(n);
    this.acrossM = new Float64Array(n);
    this.meanRunsM = new Float64Array(RUNS_ON.length * n);
    this.level = new Float64Array(2 * n * (BEARINGS + 1));
    this.running = new Float64Array(2 * n * (BEARINGS + 1));
    for (let k = 0, at = 0; k <= BEARINGS; k++) {
      pattern.face(k / PER_RAD + axisRad);
      pattern.faceRuns(k / PER_RAD + axisRad);
      if (k < BEARINGS) pattern.runsM.forEach((m, i) => (this.meanRunsM[i]! += m / BEARINGS));
      for (let p = 0; p < n; p++, at += 2) {
        const run = pattern.runsM[RUNS_ON.length * p + ON_FAIRWAY]!;
        const sin = pattern.runSin[p]!;
        this.running[at] = run * Math.sqrt(1 - sin * sin);
        this.running[at + 1] = run * sin;
        this.level[at] = pattern.alongM[p]!;
        this.level[at + 1] = pattern.acrossM[p]!;
      }
    }
    for (let at = 0; at < this.level.length; at += 2) {
      this.running[at]! -= (usualRunsM ?? this.meanRunsM)[RUNS_ON.length * ((at / 2) % n) + ON_FAIRWAY]!;
      this.level[at]! += this.running[at]!;
      this.level[at + 1]! += this.running[at + 1]!;
    }
  }

  /** Sets `alongM` and `acrossM` for a line from (u, v), its bearing clockwise from the frame's v axis. */
  face(u: number, v: number, bearing: number): void {
    const { pattern, heightAt, alongM, acrossM } = this;
    if (heightAt === undefined) {
      this.read(this.level, bearing);
      return;
    }
    this.read(this.running, bearing);
    pattern.face(bearing + this.axisRad, { u, v, sin: Math.sin(bearing), cos: Math.cos(bearing) }, heightAt);
    for (let p = 0; p < alongM.length; p++) {
      alongM[p]! += pattern.alongM[p]!;
      acrossM[p]! += pattern.acrossM[p]!;
    }
  }

  private read(table: Float64Array, bearing: number): void {
    const { alongM, acrossM } = this;
    const x = placeOf(bearing);
    const k = x | 0;
    const f = x - k;
    const row = 2 * alongM.length;
    for (let p = 0, at = k * row; p < alongM.length; p++, at += 2) {
      const a = table[at]!;
      const r = table[at + 1]!;
      alongM[p] = a + f * (table[at + row]! - a);
      acrossM[p] = r + f * (table[at + row + 1]! - r);
    }
  }

  /** How much farther than the reference pattern and the mean run the good strike's mean goes down a line on level ground. */
  furtherM(bearing: number): number {
    const x = placeOf(bearing);
    const k = x | 0;
    const row = 2 * this.alongM.length;
    const a = this.level[k * row]!;
    return a + (x - k) * (this.level[(k + 1) * row]! - a);
  }

  /** Sets the pattern itself for a line: where its parts land, and how they run. */
  facePattern(u: number, v: number, bearing: number): PatternToday {
    const { pattern, heightAt } = this;
    pattern.face(
      bearing + this.axisRad,
      heightAt && { u, v, sin: Math.sin(bearing), cos: Math.cos(bearing) },
      heightAt,
    );
    pattern.faceRuns(bearing + this.axisRad);
    return pattern;
  }
}

/** Where a bearing lies among `BEARINGS`, from nought up. */
function placeOf(bearing: number): number {
  const x = (bearing * PER_RAD) % BEARINGS;
  return x < 0 ? Math.min(BEARINGS - 1e-9, x + BEARINGS) : x;
}
