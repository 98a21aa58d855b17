import type { PlanDocument } from '@leeway/contract';
import { FOOT_M } from '@leeway/engine';
import type { Units } from './quantities.ts';

type Day = PlanDocument['day'];

/** Mile = 1.609344 km, exactly. */
const MPH_MPS = 0.44704;
/** A wind measured so near the ground was felt, not forecast. */
const FELT_BELOW_M = 5;

/** The day of a plan in one sentence or two: wind, air, ground, and what is assumed. */
export function dayWords(day: Day, units: Units): string {
  const air = [windWords(day, units), temperatureWords(day, units), ...heightWords(day, units)];
  return `${air.join(', ')}. ${groundWords(day)}.`;
}

function windWords({ windMps, windFromDeg = 0, windHeightM = 10, gustMps }: Day, units: Units): string {
  if (windMps === 0) return 'Calm air';
  const speed = (mps: number): string =>
    units === 'yd' ? `${Math.round(mps / MPH_MPS)} mph` : `${Math.round(mps * 10) / 10} m/s`;
  const known = windHeightM < FELT_BELOW_M ? 'felt' : 'forecast';
  const gusts = gustMps === undefined ? '' : `, gusts of ${speed(gustMps)}`;
  return `Wind ${speed(windMps)} from ${Math.round(windFromDeg)}°, as ${known} at ${Math.round(windHeightM)} m${gusts}`;
}

const temperatureWords = ({ temperatureC }: Day, units: Units): string =>
  units === 'yd' && temperatureC !== 20
    ? `${Math.round(temperatureC * 1.8 + 32)} °F`
    : `${Math.round(temperatureC)} °C`;

/** How high the course lies, where that was told. */
const heightWords = ({ altitudeM = 0 }: Day, units: Units): string[] =>
  altitudeM === 0 ? [] : [units === 'yd' ? `${Math.round(altitudeM / FOOT_M)} ft up` : `${Math.round(altitudeM)} m up`];

function groundWords({ firmness, greenSpeedM, wet, frozen, plugging }: Day): string {
  const turf = frozen
    ? 'Frozen ground'
    : wet
      ? 'Wet ground'
      : firmness === undefined
        ? undefined
        : `Ground ${firmness}`;
  const told = [
    turf ?? 'Normal firmness is assumed',
    ...(greenSpeedM === undefined ? [] : [`greens run ${(greenSpeedM / FOOT_M).toFixed(1)} ft`]),
    ...(plugging ? ['balls plug'] : []),
  ];
  return told.join(', ');
}
