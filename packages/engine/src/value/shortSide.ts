import { cellAt, FAIRWAY, GREEN, type Raster } from './raster.ts';

/** Directions about the flag that the room on the green is kept for, and the steps that it is found in. */
const DIRECTIONS = 120;
const STEP_M = 0.25;
/** Beyond this a ball stops by its flight, as its pattern says. */
const FARTHEST_M = 45;
/** The share of the way to the flag that must be carried: up to these, one after another, a ball is the harder to stop. */
const CARRIED = [0.5, 0.7, 0.85] as const;

/** How hard a short shot is to stop from a place: nought where at least half of the way runs over green or fairway, up to 3 where next to none does. */
export class ShortSide {
  private readonly flagU: number;
  private readonly flagV: number;
  /** Green and fairway from the flag outwards, metres, by direction. */
  private readonly roomM = new Float64Array(DIRECTIONS);

  constructor(raster: Raster, flagU: number, flagV: number) {
    this.flagU = flagU;
    this.flagV = flagV;
    const isShort = (u: number, v: number): boolean => {
      const code = raster.surface[cellAt(raster, u, v)]!;
      return code === GREEN || code === FAIRWAY;
    };
    for (let k = 0; k < DIRECTIONS; k++) {
      const turn = (2 * Math.PI * k) / DIRECTIONS;
      const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
      let m = 0;
      while (m < FARTHEST_M && isShort(flagU + m * sin, flagV + m * cos)) m += STEP_M;
      this.roomM[k] = m;
    }
  }

  at(u: number, v: number): number {
    const du = u - this.flagU;
    const dv = v - this.flagV;
    const distanceM = Math.sqrt(du * du + dv * dv);
    if (distanceM > FARTHEST_M) return 0;
    const turn = Math.round(Math.atan2(du, dv) * (DIRECTIONS / (2 * Math.PI)));
    const carried = 1 - this.roomM[turn < 0 ? turn + DIRECTIONS : turn % DIRECTIONS]! / distanceM;
    return carried <= CARRIED[0] ? 0 : carried <= CARRIED[1] ? 1 : carried <= CARRIED[2] ? 2 : 3;
  }
}
