import { type Day, FIRMNESSES, stillAirOf } from '@leeway/engine';
import * as z from 'zod';

/** The day that a document was made for: SI units and degrees, wind by where it blows from, pressure as it is where the ball lies. */
export const daySchema = z.strictObject({
  windMps: z.number().min(0),
  windFromDeg: z.number(),
  /** Height that the wind was measured at, and the roughness of the ground under it. */
  windHeightM: z.number().positive(),
  roughnessM: z.number().positive(),
  gustMps: z.number().min(0).optional(),
  temperatureC: z.number(),
  altitudeM: z.number(),
  pressureHpa: z.number().positive(),
  humidityPercent: z.number().min(0).max(100),
  /** What the air weighs, from the four before. */
  densityKgM3: z.number().positive(),
  /** Absent when nobody told it: normal is assumed. */
  firmness: z.enum(FIRMNESSES).optional(),
  greenSpeedM: z.number().positive().optional(),
  wet: z.literal(true).optional(),
  frozen: z.literal(true).optional(),
  plugging: z.literal(true).optional(),
});
export type DayDocument = z.infer<typeof daySchema>;

const DECIMALS = 4;

/** A day as documents tell it. */
export function dayDocument(day: Day): DayDocument {
  const { wind, ground } = day;
  return {
    windMps: rounded(wind.speedMps),
    windFromDeg: rounded(wind.fromDeg),
    windHeightM: rounded(wind.heightM),
    roughnessM: rounded(wind.roughnessM),
    ...(wind.gustMps === undefined ? {} : { gustMps: rounded(wind.gustMps) }),
    temperatureC: rounded(day.temperatureC),
    altitudeM: rounded(day.altitudeM),
    pressureHpa: rounded(day.stationHpa),
    humidityPercent: rounded(day.humidityPercent),
    densityKgM3: rounded(stillAirOf(day).densityKgM3),
    ...(ground.firmness === undefined ? {} : { firmness: ground.firmness }),
    ...(ground.greenSpeedM === undefined ? {} : { greenSpeedM: rounded(ground.greenSpeedM) }),
    ...(ground.wet ? { wet: true as const } : {}),
    ...(ground.frozen ? { frozen: true as const } : {}),
    ...(ground.plugging ? { plugging: true as const } : {}),
  };
}

const rounded = (value: number): number => Number(value.toFixed(DECIMALS));
