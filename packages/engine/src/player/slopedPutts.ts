import type { PuttingParameters } from './file.ts';
import type { PuttingRow } from './option.ts';
import { leaveMean } from './putting.ts';

/** Deceleration of a ball on a flat green, m/s², by how far it rolls from the release at 1.83 m/s that green speeds are measured with. */
export const decelerationOf = (greenSpeedM: number): number => 1.83 ** 2 / (2 * greenSpeedM);
const GRAVITY = 9.81;
/** Greens of a usual speed, metres of roll (9 ft). */
const USUAL_SPEED_M = 2.74;
/** A line down which a ball would hardly stop is taken to hold it this share of what flat ground does. */
const LEAST_HOLD = 0.3;
const MOST_HOLD = 3;
/** The break is read wrong by this share of itself (one standard deviation): our assumption. */
const READ_WRONG = 0.1;

/** Slope as a putt meets it: rises of the ground per metre along the line (uphill positive) and across it. */
export interface PuttSlope {
  readonly up: number;
  readonly across: number;
}

/**
 * Putts expected on a slope. With k = g / a the gravity over the deceleration on flat ground, a line that rises by `up` holds the ball r = 1 + k up times as
 * well. What the player leaves past, what the hole still catches, and the error of length are 1 / r of what they are on flat ground; the ball
 * breaks by k |across| / r, of which a tenth is misread and added to the error of angle in squares. A putt after a miss counts as flat. On flat ground
 * this is the flat model itself. Uphill is never dearer than downhill.
 */
export class SlopedPutts {
  private readonly parameters: PuttingParameters;
  private readonly rows: readonly PuttingRow[];
  private readonly k: number;
  private readonly table: Float64Array;

  constructor(parameters: PuttingParameters, rows: readonly PuttingRow[], greenSpeedM = USUAL_SPEED_M) {
    this.parameters = parameters;
    this.rows = rows;
    this.k = GRAVITY / decelerationOf(greenSpeedM);
    this.table = new Float64Array(DISTANCES_M.length * HOLDS.length * BREAKS_RAD.length);
    let i = 0;
    for (const hold of HOLDS) {
      for (const breakRad of BREAKS_RAD)
        for (const d of DISTANCES_M) this.table[i++] = this.at(d, hold, breakRad) - this.at(d, 1, 0);
    }
  }

  /** How many more putts than on flat ground. */
  more(distanceM: number, { up, across }: PuttSlope): number {
    if (up === 0 && across === 0) return 0;
    const hold = Math.min(MOST_HOLD, Math.max(LEAST_HOLD, 1 + this.k * up));
    const breakRad = (this.k * Math.abs(across)) / hold;
    const [h, hf] = placeIn(HOLDS, hold);
    const [b, bf] = placeIn(BREAKS_RAD, breakRad);
    const [d, df] = placeIn(DISTANCES_M, distanceM);
    let sum = 0;
    for (const [i, wi] of [[h, 1 - hf] as const, [h + 1, hf] as const]) {
      for (const [j, wj] of [[b, 1 - bf] as const, [b + 1, bf] as const]) {
        const row = (i * BREAKS_RAD.length + j) * DISTANCES_M.length + d;
        sum += wi * wj * ((1 - df) * this.table[row]! + df * this.table[row + 1]!);
      }
    }
    return sum;
  }

  /** Putts from a distance on a line that holds the ball so well and breaks so much. */
  private at(distanceM: number, hold: number, breakRad: number): number {
    if (distanceM === 0) return 0;
    const { parameters: p } = this;
    const misread = (READ_WRONG * breakRad * 180) / Math.PI;
    const sloped = {
      ...p,
      sdAngleDeg: Math.hypot(p.sdAngleDeg, misread),
      sdDistance: p.sdDistance / hold,
      pastM: p.pastM / hold,
      captureM: p.captureM / hold,
    };
    return leaveMean(sloped, distanceM, this.rows);
  }

  /** Whether a ball at rest on ground of this steepness stays there. */
  holds(steepness: number): boolean {
    return this.k * steepness < 1;
  }
}

const DISTANCES_M = [0, 0.5, 1, 1.5, 2, 3, 4, 6, 9, 13, 20, 40];
const HOLDS = [LEAST_HOLD, 0.5, 0.7, 0.85, 1, 1.25, 1.6, 2.2, MOST_HOLD];
const BREAKS_RAD = [0, 0.1, 0.25, 0.5, 1, 2];

/** The interval of a rising list that holds x, and the share of it that x is along; ends are held. */
function placeIn(list: readonly number[], x: number): readonly [number, number] {
  let k = 0;
  while (k + 2 < list.length && list[k + 1]! <= x) k++;
  const t = (x - list[k]!) / (list[k + 1]! - list[k]!);
  return [k, Math.min(1, Math.max(0, t))];
}
