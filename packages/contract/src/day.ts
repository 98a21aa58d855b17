import { type Day, FIRMNESSES, POSSIBLE, type Quantity, stillAirOf } from '@leeway/engine';
import * as z from 'zod';

const within = (quantity: Quantity): z.ZodNumber => {
  const [least, most] = POSSIBLE[quantity];
  return z.number().min(least).max(most);
};

/** The day that a document was made for: SI units and degrees, wind by where it blows from, pressure as it is where the ball lies. */
export const daySchema = z.strictObject({
  windMps: within('windMps'),
  windFromDeg: within('windFromDeg'),
  /** Height that the wind was measured at, and the roughness of the ground under it. */
  windHeightM: within('windHeightM'),
  roughnessM: within('roughnessM'),
  gustMps: within('gustMps').optional(),
  temperatureC: within('temperatureC'),
  altitudeM: within('altitudeM'),
  pressureHpa: within('stationHpa'),
  humidityPercent: within('humidityPercent'),
  /** What the air weighs, from the four before. */
  densityKgM3: z.number().positive(),
  /** Absent when nobody told it: normal is assumed. */
  firmness: z.enum(FIRMNESSES).optional(),
  greenSpeedM: within('greenSpeedM').optional(),
  wet: z.literal(true).optional(),
  frozen: z.literal(true).optional(),
  plugging: z.literal(true).optional(),
  preferredLies: z.literal(true).optional(),
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
    ...(ground.preferredLies ? { preferredLies: true as const } : {}),
  };
}

/** The day that a document tells. The density is not read: it follows from the rest. */
export const dayOf = (d: DayDocument): Day => ({
  temperatureC: d.temperatureC,
  stationHpa: d.pressureHpa,
  humidityPercent: d.humidityPercent,
  altitudeM: d.altitudeM,
  wind: {
    speedMps: d.windMps,
    fromDeg: d.windFromDeg,
    heightM: d.windHeightM,
    roughnessM: d.roughnessM,
    ...(d.gustMps === undefined ? {} : { gustMps: d.gustMps }),
  },
  ground: {
    ...(d.firmness === undefined ? {} : { firmness: d.firmness }),
    ...(d.greenSpeedM === undefined ? {} : { greenSpeedM: d.greenSpeedM }),
    ...(d.wet ? { wet: true } : {}),
    ...(d.frozen ? { frozen: true } : {}),
    ...(d.plugging ? { plugging: true } : {}),
    ...(d.preferredLies ? { preferredLies: true } : {}),
  },
});

const rounded = (value: number): number => Number(value.toFixed(DECIMALS));
