import type { FlightAir } from '../flight/launch.ts';
import type { GroundToday } from '../flight/surfaces.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { airDensityKgM3, airViscosityPaS, stationPressure } from './air.ts';

/** The wind as told: speed, the bearing it blows from, the height it was measured at and the roughness of the ground under it. */
export interface Wind {
  readonly speedMps: number;
  readonly fromDeg: number;
  readonly heightM: number;
  readonly roughnessM: number;
  /** The strongest gusts; the wind is then spread about its mean. */
  readonly gustMps?: number;
}

/** Today: air, wind and ground. Pressure is the one where the ball is; what was not given is the reference day's. */
export interface Day {
  readonly temperatureC: number;
  readonly stationHpa: number;
  readonly humidityPercent: number;
  readonly altitudeM: number;
  readonly wind: Wind;
  readonly ground: GroundToday;
}

export const SEA_LEVEL_HPA = 1013.25;
export const OPEN_GROUND_M = 0.03;
export const FORECAST_HEIGHT_M = 10;

export const CALM: Wind = { speedMps: 0, fromDeg: 0, heightM: FORECAST_HEIGHT_M, roughnessM: OPEN_GROUND_M };

/** The day that every stored carry is for: calm, level, 20 °C, 1013.25 hPa, 50 % relative humidity. */
export const REFERENCE: Day = {
  temperatureC: 20,
  stationHpa: SEA_LEVEL_HPA,
  humidityPercent: 50,
  altitudeM: 0,
  wind: CALM,
  ground: {},
};

/** Pressure where the ball is, hPa, from the one that a weather report gives (reduced to sea level). */
export const stationHpa = (seaLevelHpa: number, altitudeM: number): number => stationPressure(seaLevelHpa, altitudeM);

/** The air of a flight down a target line of this bearing, degrees. */
export function airOf(day: Day, bearingDeg: number): FlightAir {
  const { wind } = day;
  const towards = (wind.fromDeg + 180 - bearingDeg) * RAD_PER_DEG;
  return {
    ...stillAirOf(day),
    tailMps: wind.speedMps * Math.cos(towards),
    rightMps: wind.speedMps * Math.sin(towards),
    windHeightM: wind.heightM,
    roughnessM: wind.roughnessM,
  };
}

/** The day's air with the wind gone. */
export const stillAirOf = (day: Day): FlightAir => ({
  densityKgM3: airDensityKgM3(day.temperatureC, day.stationHpa * 100, day.humidityPercent / 100),
  viscosityPaS: airViscosityPaS(day.temperatureC),
  tailMps: 0,
  rightMps: 0,
  windHeightM: FORECAST_HEIGHT_M,
  roughnessM: OPEN_GROUND_M,
});

/**
 * Standard deviation of the wind's speed about its mean, m/s. With gusts told it is a third of their excess (a gust of three seconds in ten
 * minutes stands about three deviations out); otherwise that of a neutral wind over this ground, U / ln(h / z0) (EN 1991-1-4, 4.4).
 */
export function windSdMps(wind: Wind): number {
  if (wind.gustMps !== undefined) return Math.max(0, wind.gustMps - wind.speedMps) / 3;
  return wind.speedMps / Math.log(Math.max(2, wind.heightM / wind.roughnessM));
}
