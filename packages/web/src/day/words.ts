import type { HoleDocument, ShotDocument } from '@leeway/contract';
import type { Units, Wind } from '@leeway/engine';

/** Words of the day: its wind, and what is taken of air and ground. */
const MPS_PER_MPH = 0.44704;

/** "12 mph", or "calm". */
export function windSpeed(speedMps: number, units: Units): string {
  const speed = Math.round(units === 'yd' ? speedMps / MPS_PER_MPH : speedMps * 2) / (units === 'yd' ? 1 : 2);
  return speed === 0 ? 'calm' : `${speed} ${units === 'yd' ? 'mph' : 'm/s'}`;
}

/** "12 mph from 240 degrees, forecast", as it is spoken. */
export const windSaid = ({ speedMps, fromDeg, heightM }: Wind, units: Units): string => {
  const speed = windSpeed(speedMps, units);
  return speed === 'calm' ? speed : `${speed} from ${Math.round(fromDeg)} degrees, ${knownWords(heightM)}`;
};

const knownWords = (heightM: number): string => (heightM < 5 ? 'felt' : 'forecast');

export const windHelp = (units: Units): string =>
  `Left and right arrow keys turn the wind by 5 degrees, with shift by 1; up and down make it stronger and weaker by ${units === 'yd' ? '1 mph' : 'half a metre a second'}. Escape puts it back.`;

/** The day that the plan is for, and how the ground is taken, in one sentence. */
export function dayWords(wind: Wind, units: Units, heights?: HoleDocument['heights']): string {
  const speed = windSpeed(wind.speedMps, units);
  const air =
    speed === 'calm' ? 'Calm air' : `Wind ${speed} from ${Math.round(wind.fromDeg)}°, ${knownWords(wind.heightM)}`;
  const ground = heights === undefined ? 'level ground' : `heights of the ground from ${HEIGHTS_FROM[heights]}`;
  return `${air}; ${ground}, 20 °C, normal firmness assumed.`;
}

const HEIGHTS_FROM = { 'spot heights': 'its spot heights', raster: 'a raster' } as const;

/** The wind along and across a shot, as a caddie says it: "into, off the left". */
export function windAlong(shot: ShotDocument, { fromDeg }: Wind): string {
  const { from, aim } = shot;
  const bearing = Math.atan2((aim.lon - from.lon) * Math.cos((from.lat * Math.PI) / 180), aim.lat - from.lat);
  const away = (fromDeg * Math.PI) / 180 - bearing;
  const along = Math.cos(away);
  const across = Math.sin(away);
  return [
    ...(Math.abs(along) < FELT_SHARE ? [] : [along > 0 ? 'into' : 'helping']),
    ...(Math.abs(across) < FELT_SHARE ? [] : [across > 0 ? 'off the right' : 'off the left']),
  ].join(', ');
}

/** Less of the wind than this is not spoken of: within 22 degrees of straight. */
const FELT_SHARE = 0.38;
