import type { HoleGround, PlayerModel, PuttingRow } from '@leeway/engine';
import { cellOf, type Raster, rasterOf, surfaceOfCell } from './raster.ts';

/** What a cell is to the rival: a lie with a value grid of its own, or one of the three other endings of a stroke. */
const GREEN = 0;
const FAIRWAY = 1;
export const ROUGH = 2;
const BUNKER = 3;
const RECOVERY = 4;
export const PENALTY = 5;
export const OUT = 6;
/** The lies that are solved at the nodes. A tee area plays as fairway. */
export const GRID_LIES = ['fairway', 'rough', 'bunker', 'recovery'] as const;
const CODE = {
  green: GREEN,
  fairway: FAIRWAY,
  tee: FAIRWAY,
  rough: ROUGH,
  bunker: BUNKER,
  recovery: RECOVERY,
  penalty: PENALTY,
  out: OUT,
} as const;

const PUTT_STEP_M = 0.1;
const PUTT_ROWS = 1000;
/** A drop stays within this of the crossing point on the line back from the flag; lateral drops lie two club-lengths away. */
const BACK_M = 150;
const LATERAL_M = 2.3;
const LATERAL_POINTS = 16;
/** The stroke is replayed when there is no legal drop. */
const NO_DROP = 1e6;

/** A value a node is given before it is first solved: not optimistic, so that no drop is taken for better than it is. */
const firstGuess = (distanceM: number): number => 2.6 + distanceM / 110;

/** The rival's value field: for each lie a grid of nodes, bilinear between them; drops are kept by crossing cell until `forgetDrops`. */
export class Field {
  readonly ground: HoleGround;
  readonly raster: Raster;
  readonly gridM: number;
  readonly columns: number;
  readonly rows: number;
  /** `CODE` of each raster cell. */
  readonly code: Uint8Array;
  /** Values by lie code; `nodes[code][row * columns + column]`. */
  readonly nodes: readonly Float64Array[];
  private readonly putts: Float64Array;
  private readonly drops: Float64Array;

  constructor(ground: HoleGround, player: PlayerModel, cellM: number, gridM: number) {
    this.ground = ground;
    this.raster = rasterOf(ground, cellM);
    const { columns, rows, westM, southM } = this.raster;
    this.gridM = gridM;
    this.columns = Math.ceil((columns * cellM) / gridM) + 1;
    this.rows = Math.ceil((rows * cellM) / gridM) + 1;
    this.code = Uint8Array.from(this.raster.area, (_, cell) => CODE[surfaceOfCell(ground, this.raster, cell)]);
    const guess = Float64Array.from({ length: this.columns * this.rows }, (_, i) => {
      const eastM = westM + (i % this.columns) * gridM;
      const northM = southM + Math.floor(i / this.columns) * gridM;
      return firstGuess(Math.hypot(eastM - ground.flag.eastM, northM - ground.flag.northM));
    });
    this.nodes = [new Float64Array(0), ...GRID_LIES.map(() => guess.slice())];
    this.putts = Float64Array.from({ length: PUTT_ROWS }, (_, i) => puttsAt(player.putting, i * PUTT_STEP_M));
    this.drops = new Float64Array(this.code.length).fill(Number.NaN);
  }

  forgetDrops(): void {
    this.drops.fill(Number.NaN);
  }

  codeAt(eastM: number, northM: number): number {
    return this.code[cellOf(this.raster, eastM, northM)]!;
  }

  /** Strokes still to play for a ball at rest, in play, on ground of this code. */
  dryValue(code: number, eastM: number, northM: number): number {
    if (code === GREEN) {
      const steps = Math.hypot(eastM - this.ground.flag.eastM, northM - this.ground.flag.northM) / PUTT_STEP_M;
      const i = Math.min(PUTT_ROWS - 2, Math.floor(steps));
      const t = Math.min(1, steps - i);
      return this.putts[i]! * (1 - t) + this.putts[i + 1]! * t;
    }
    const x = Math.min(this.columns - 1.001, Math.max(0, (eastM - this.raster.westM) / this.gridM));
    const y = Math.min(this.rows - 1.001, Math.max(0, (northM - this.raster.southM) / this.gridM));
    const column = Math.floor(x);
    const row = Math.floor(y);
    const u = x - column;
    const v = y - row;
    const values = this.nodes[code]!;
    const i = row * this.columns + column;
    const south = values[i]! * (1 - u) + values[i + 1]! * u;
    const north = values[i + this.columns]! * (1 - u) + values[i + this.columns + 1]! * u;
    return south * (1 - v) + north * v;
  }

  /** Value of the cheapest legal drop for a ball from `(fromE, fromN)` that rests in a penalty area; `NO_DROP` if there is none. */
  dropValue(fromE: number, fromN: number, eastM: number, northM: number): number {
    const lengthM = Math.hypot(eastM - fromE, northM - fromN);
    const stepE = ((fromE - eastM) / lengthM) * this.raster.cellM;
    const stepN = ((fromN - northM) / lengthM) * this.raster.cellM;
    let e = eastM;
    let n = northM;
    for (let back = 0; back < lengthM && this.codeAt(e + stepE, n + stepN) === PENALTY; back += this.raster.cellM) {
      e += stepE;
      n += stepN;
    }
    const crossing = cellOf(this.raster, e, n);
    if (Number.isNaN(this.drops[crossing])) {
      const area = this.ground.areas[this.raster.area[crossing]!];
      this.drops[crossing] = this.bestDrop(e, n, area?.red === true);
    }
    return this.drops[crossing]!;
  }

  private bestDrop(e: number, n: number, red: boolean): number {
    const { flag } = this.ground;
    const flagM = Math.hypot(e - flag.eastM, n - flag.northM);
    let best = NO_DROP;
    const consider = (dropE: number, dropN: number): void => {
      const code = this.codeAt(dropE, dropN);
      if (code !== PENALTY && code !== OUT) best = Math.min(best, this.dryValue(code, dropE, dropN));
    };
    for (let t = 1; t <= BACK_M; t++) {
      consider(e + ((e - flag.eastM) / flagM) * t, n + ((n - flag.northM) / flagM) * t);
    }
    for (let k = 0; red && k < LATERAL_POINTS; k++) {
      const dropE = e + LATERAL_M * Math.sin((2 * Math.PI * k) / LATERAL_POINTS);
      const dropN = n + LATERAL_M * Math.cos((2 * Math.PI * k) / LATERAL_POINTS);
      if (Math.hypot(dropE - flag.eastM, dropN - flag.northM) >= flagM) consider(dropE, dropN);
    }
    return best;
  }
}

function puttsAt(rows: readonly PuttingRow[], distanceM: number): number {
  const above = rows.findIndex((r) => r.distanceM > distanceM);
  if (above < 0) return rows.at(-1)!.strokes;
  if (above === 0) return rows[0]!.strokes;
  const low = rows[above - 1]!;
  const high = rows[above]!;
  const t = (distanceM - low.distanceM) / (high.distanceM - low.distanceM);
  return low.strokes * (1 - t) + high.strokes * t;
}
