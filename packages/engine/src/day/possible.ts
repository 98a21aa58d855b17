/**
 * What a launch and a day can be, ends included, in the units of the names. Wider than any day that is played on, and narrow enough that the
 * formulas hold; what lies outside is refused by name at the door.
 */
export const POSSIBLE = {
  speedMps: [1, 120],
  launchDeg: [0.1, 89],
  spinRpm: [0, 15_000],
  axisDeg: [-89, 89],
  azimuthDeg: [-89, 89],
  bearingDeg: [-360, 360],
  targetHeightM: [-300, 300],
  windMps: [0, 40],
  gustMps: [0, 60],
  windFromDeg: [-360, 360],
  windHeightM: [0.5, 200],
  roughnessM: [0.0001, 2],
  temperatureC: [-30, 50],
  altitudeM: [-450, 5000],
  seaLevelHpa: [870, 1090],
  stationHpa: [500, 1090],
  humidityPercent: [0, 100],
  greenSpeedM: [1, 5],
} as const satisfies { readonly [quantity: string]: readonly [number, number] };

export type Quantity = keyof typeof POSSIBLE;

/** Whether a quantity lies in its range; never for NaN. */
export const isPossible = (quantity: Quantity, value: number): boolean =>
  value >= POSSIBLE[quantity][0] && value <= POSSIBLE[quantity][1];
