import { heightOn } from '../ground/heights.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import { SlopedPutts, type PuttSlope } from '../player/slopedPutts.ts';
import type { HeightAt } from '../reach/patternToday.ts';
import type { PlayFrame } from './playFrame.ts';

/** Heights that stand farther apart than this, metres, say nothing of a green. */
const FINE_M = 2;
/** Heights are compared over this length, metres. */
const OVER_M = 1;
/** A ball that does not hold rolls down in steps, so far at most. */
const STEP_M = 0.5;
const MOST_STEPS = 60;

/** A place of the play frame. */
type Spot = readonly [number, number];

/** What the slope of a green does to putts and to balls at rest, where its heights are known and the player putts by parameters. */
export class GreenSlope {
  private readonly heightAt: HeightAt;
  private readonly putts: SlopedPutts;

  constructor(heightAt: HeightAt, putts: SlopedPutts) {
    this.heightAt = heightAt;
    this.putts = putts;
  }

  /** How many more putts than on flat ground from a place to the flag. */
  more(u: number, v: number, flagU: number, flagV: number): number {
    const distanceM = Math.hypot(flagU - u, flagV - v);
    return distanceM < 1e-6 ? 0 : this.putts.more(distanceM, this.slope(u, v, flagU, flagV, distanceM));
  }

  /** Rise along the whole line, and the slope across it at its middle. */
  private slope(u: number, v: number, flagU: number, flagV: number, distanceM: number): PuttSlope {
    const { heightAt } = this;
    const [onU, onV] = [(flagU - u) / distanceM, (flagV - v) / distanceM];
    const [midU, midV] = [(u + flagU) / 2, (v + flagV) / 2];
    const right = heightAt(midU + (onV * OVER_M) / 2, midV - (onU * OVER_M) / 2);
    const left = heightAt(midU - (onV * OVER_M) / 2, midV + (onU * OVER_M) / 2);
    return { up: (heightAt(flagU, flagV) - heightAt(u, v)) / distanceM, across: (right - left) / OVER_M };
  }

  /** Where a ball on the green stays: where it lies, or below, on the first ground that holds it or where it has left the green. */
  rest(u: number, v: number, onGreen: (u: number, v: number) => boolean): Spot {
    const { heightAt } = this;
    let [x, y] = [u, v];
    for (let i = 0; i < MOST_STEPS; i++) {
      const east = (heightAt(x + OVER_M / 2, y) - heightAt(x - OVER_M / 2, y)) / OVER_M;
      const north = (heightAt(x, y + OVER_M / 2) - heightAt(x, y - OVER_M / 2)) / OVER_M;
      const steepness = Math.hypot(east, north);
      if (this.putts.holds(steepness)) break;
      x -= (STEP_M * east) / steepness;
      y -= (STEP_M * north) / steepness;
      if (!onGreen(x, y)) break;
    }
    return [x, y];
  }
}

/** The heights of a green in the play frame, where they are known finely enough for putts; those of a hole's rise and fall are not. */
export const greenHeights = ({ heights }: HoleGround, frame: PlayFrame): HeightAt | undefined =>
  heights === undefined || heights.stepM > FINE_M
    ? undefined
    : (u, v) => {
        const { eastM, northM } = frame.toPlane(u, v);
        return heightOn(heights, eastM, northM);
      };

/** `undefined` where the green is taken as flat: its heights are not known, or the player's putts are a stated table. */
export const greenSlopeOf = (heightAt: HeightAt | undefined, player: PlayerModel): GreenSlope | undefined =>
  heightAt === undefined || player.putter === undefined
    ? undefined
    : new GreenSlope(heightAt, new SlopedPutts(player.putter, player.putting));
