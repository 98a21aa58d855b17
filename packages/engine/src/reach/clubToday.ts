import { type Day, REFERENCE, stillAirOf } from '../day/day.ts';
import { REFERENCE_CONDITIONS } from '../day/normalise.ts';
import { calibrate, landedAtM } from '../flight/calibrate.ts';
import { type LaunchFamily, launchFamily, TAG_SHIFT } from '../flight/family.ts';
import { COARSE_STEP_S, flyInto } from '../flight/fly.ts';
import { emptyFlight, type Flight, type FlightAir, type Launch } from '../flight/launch.ts';
import { runOut, touchdownOf } from '../flight/runOut.ts';
import type { GroundToday } from '../flight/surfaces.ts';
import type { ClubFlight } from '../player/option.ts';

/** Surfaces that a pitched ball runs on, in this order; it stays where it pitches in sand, in a penalty area and out of bounds. */
export const RUNS_ON = ['green', 'fairway', 'rough'] as const;

/** Directions from a tail wind round to a head wind, by 5 degrees; the other half is their mirror image. */
export const TURNS = 37;
/** Every so manieth of them is run out. */
export const RUN_EVERY = 3;
const RUN_TURNS = (TURNS - 1) / RUN_EVERY + 1;
/** Figures a run row: change on each of `RUNS_ON`, and the sine of the direction that the ball comes down in, right of the aim line. */
export const RUN_FIGURES = RUNS_ON.length + 1;
/** Carries that are flown, metres apart; between them what the day does is straight to within 5 cm. */
export const NODE_M = 5;

/** What the day does to one carry of a club. */
export interface CarryToday {
  /** For each height and turn: metres along and across, one after another. */
  readonly moves: Float64Array;
  /** For each turn that is run out: `RUN_FIGURES`. */
  readonly runs: () => Float64Array;
}

const LOFTS_DEG: readonly [number, number] = [8, 64];

/**
 * What the day does to the balls of one club, by carry on the reference day, by the turn from the bearing of the aim line to the one that the wind blows to, and by
 * the height of the landing ground above the ball. A launch that has the carry is flown in the reference air and in today's; what counts is the difference.
 */
export class ClubToday {
  private readonly day: Day;
  private readonly heightsM: readonly number[];
  private readonly family: LaunchFamily;
  private readonly loftDeg: number;
  private readonly known = new Map<number, CarryToday>();

  constructor(club: ClubFlight, day: Day, heightsM: readonly number[]) {
    this.day = day;
    this.heightsM = heightsM;
    this.loftDeg = Math.min(LOFTS_DEG[1], Math.max(LOFTS_DEG[0], club.loftDeg));
    this.family = launchFamily(this.loftDeg, TAG_SHIFT[club.tag ?? 'normal']);
  }

  /** For `node` times `NODE_M` of carry. */
  at(node: number): CarryToday {
    let found = this.known.get(node);
    if (found === undefined) this.known.set(node, (found = this.flown(node * NODE_M)));
    return found;
  }

  /** Nothing for a ball too slow to be flown; beyond the club's longest carry, that one's changes in proportion. */
  private flown(carryM: number): CarryToday {
    const found = calibrate(this.family, carryM, this.loftDeg, REFERENCE_CONDITIONS);
    if (found.status === 'found') return this.flownFrom(found.launch, 1);
    if (found.status !== 'too far') return { moves: new Float64Array(2 * TURNS * this.heightsM.length), runs: noRuns };
    const most = calibrate(this.family, found.mostM * 0.999, this.loftDeg, REFERENCE_CONDITIONS);
    return most.status === 'found' ? this.flownFrom(most.launch, carryM / found.mostM) : this.flown(0);
  }

  private flownFrom(launch: Launch, scale: number): CarryToday {
    const { heightsM, day } = this;
    const out = emptyFlight();
    const referenceM = landedAtM(flyInto(out, launch, REFERENCE_CONDITIONS.air, 0, COARSE_STEP_S));
    const asUsual = runsOf(out, {});
    const still = stillAirOf(day);
    const moves = new Float64Array(2 * TURNS * heightsM.length);
    const same = day.wind.speedMps === 0;
    for (const [h, heightM] of heightsM.entries()) {
      for (let k = 0; k < TURNS; k++) {
        const at = 2 * (h * TURNS + k);
        if (same && k > 0) {
          moves.copyWithin(at, at - 2, at);
          continue;
        }
        flyInto(out, launch, blowing(still, day, k), heightM, COARSE_STEP_S);
        moves[at] = scale * ((out.landed ? out.carryM : out.apexAtM) - referenceM);
        moves[at + 1] = out.landed ? scale * out.sideM : 0;
      }
    }
    let runs: Float64Array | undefined;
    return { moves, runs: () => (runs ??= this.runsFrom(launch, asUsual)) };
  }

  private runsFrom(launch: Launch, asUsual: readonly number[]): Float64Array {
    const { day } = this;
    const still = stillAirOf(day);
    const out = emptyFlight();
    const rows = new Float64Array(RUN_FIGURES * RUN_TURNS);
    for (let i = 0; i < RUN_TURNS; i++) {
      flyInto(out, launch, blowing(still, day, i * RUN_EVERY), 0, COARSE_STEP_S);
      const today = runsOf(out, day.ground);
      RUNS_ON.forEach((_, s) => (rows[RUN_FIGURES * i + s] = (today[s] ?? 0) - (asUsual[s] ?? 0)));
      const overGround = Math.hypot(out.alongMps, out.rightMps);
      rows[RUN_FIGURES * i + RUNS_ON.length] = overGround > 0 ? out.rightMps / overGround : 0;
    }
    return rows;
  }
}

const noRuns = (): Float64Array => new Float64Array(RUN_FIGURES * RUN_TURNS);

/** The air of a flight whose aim line lies so many turns from where the wind blows to. */
function blowing(still: FlightAir, { wind }: Day, turn: number): FlightAir {
  const away = (turn * Math.PI) / (TURNS - 1);
  return {
    ...still,
    tailMps: wind.speedMps * Math.cos(away),
    rightMps: wind.speedMps * Math.sin(away),
    windHeightM: wind.heightM,
    roughnessM: wind.roughnessM,
  };
}

/** Run of a landed ball on each of `RUNS_ON`, metres. */
const runsOf = (flight: Flight, ground: GroundToday): number[] =>
  RUNS_ON.map((surface) => runOut(touchdownOf(flight), () => ({ surface }), ground).runM);

/** Whether nothing about a day differs from the reference day. */
export function isReference({ wind, ground, temperatureC, stationHpa, humidityPercent }: Day): boolean {
  const asUsual = (ground.firmness ?? 'normal') === 'normal' && ground.greenSpeedM === undefined;
  const dry = !(ground.wet || ground.frozen || ground.plugging);
  const air =
    temperatureC === REFERENCE.temperatureC &&
    stationHpa === REFERENCE.stationHpa &&
    humidityPercent === REFERENCE.humidityPercent;
  return wind.speedMps === 0 && (wind.gustMps ?? 0) === 0 && asUsual && dry && air;
}
