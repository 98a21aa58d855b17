import type { ShotRow } from '@leeway/contract';
import {
  airOf,
  CALM,
  type Day,
  isPossible,
  launchFamily,
  moveShot,
  type PlayedIn,
  RAD_PER_DEG,
  REFERENCE,
  REFERENCE_CONDITIONS,
  SEA_LEVEL_HPA,
  stationHpa,
} from '@leeway/engine';

/** A shot as it would be on the reference day, and how well that is known. */
export interface OnReferenceDay {
  readonly carryM: number;
  readonly sideM?: number;
  readonly seCarryM?: number;
  readonly seDirectionDeg?: number;
}

/** The day's part of a carry is known to about this share of itself: our assumption of how well wind and slope are told. */
const DAY_ERROR = 0.15;
const LOFTS_DEG = [8, 64] as const;

/** Whether a row tells a day or a slope that its carry can be corrected for. A wind needs its bearing and the target's. */
export const tellsTheDay = (row: ShotRow): boolean => conditionsOf(row) !== undefined;

/** Where the shot was hit, so far as its row tells; nothing when it tells nothing that moves a ball. */
function conditionsOf({ readings }: ShotRow): PlayedIn | undefined {
  const { temperature, altitude, slope, bearing } = readings;
  const [speed, from] = [readings['wind speed'], readings['wind from']];
  const windy =
    typeof speed === 'number' &&
    typeof from === 'number' &&
    typeof bearing === 'number' &&
    isPossible('windMps', speed);
  const warm = typeof temperature === 'number' && isPossible('temperatureC', temperature);
  const high = typeof altitude === 'number' && isPossible('altitudeM', altitude);
  const sloping = typeof slope === 'number' && isPossible('targetHeightM', slope);
  if (!windy && !warm && !high && !sloping) return undefined;
  const day: Day = {
    ...REFERENCE,
    temperatureC: warm ? temperature : REFERENCE.temperatureC,
    altitudeM: high ? altitude : 0,
    stationHpa: stationHpa(SEA_LEVEL_HPA, high ? altitude : 0),
    wind: windy ? { ...CALM, speedMps: speed, fromDeg: from } : CALM,
  };
  return { air: airOf(day, windy ? bearing : 0), ...(sloping ? { heightM: slope } : {}) };
}

/**
 * A measured shot moved to the reference day: the launch of its club that explains where it pitched is flown again there. A shot that no launch explains, such as a
 * topped one, and one whose row tells no day, stay as measured.
 */
export function onReferenceDay(row: ShotRow, loftDeg: number): OnReferenceDay {
  const measured = { carryM: row.carryM, ...(row.sideM === undefined ? {} : { sideM: row.sideM }) };
  const from = conditionsOf(row);
  const acrossM = row.sideM ?? 0;
  if (from === undefined || Math.abs(acrossM) >= row.carryM) return measured;
  const loft = Math.min(LOFTS_DEG[1], Math.max(LOFTS_DEG[0], loftDeg));
  const landing = { alongM: Math.sqrt(row.carryM ** 2 - acrossM ** 2), acrossM };
  const moved = moveShot(landing, launchFamily(loft), loft, from, REFERENCE_CONDITIONS);
  if (moved.status !== 'found') return measured;
  const carryM = Math.hypot(moved.alongM, moved.acrossM);
  const seCarryM = DAY_ERROR * Math.abs(carryM - row.carryM);
  if (row.sideM === undefined) return { carryM, seCarryM };
  const turnedRad = Math.atan2(moved.acrossM, moved.alongM) - Math.atan2(landing.acrossM, landing.alongM);
  return { carryM, sideM: moved.acrossM, seCarryM, seDirectionDeg: (DAY_ERROR * Math.abs(turnedRad)) / RAD_PER_DEG };
}
