/** Exact flights of an independent implementation at a step of .01 s: metres, seconds, degrees. Launch speed, angle, spin, azimuth and tilt. */
export interface FlightVector {
  readonly id: string;
  readonly launch: readonly [speedMps: number, launchDeg: number, spinRpm: number, azimuthDeg: number, axisDeg: number];
  /** Temperature, height above the sea, humidity. */
  readonly air: readonly [temperatureC: number, altitudeM: number, humidity: number];
  readonly wind: readonly [tailMps: number, rightMps: number];
  readonly targetHeightM: number;
  readonly carryM: number;
  readonly sideM: number;
  readonly apexM: number;
  readonly apexAtM: number;
  readonly timeS: number;
  readonly descentDeg: number;
  readonly landingMps: number;
  readonly landingRpm: number;
}

const PLAIN = [15, 0, 0.5] as const;
const IRON = [46, 21, 7500, 0, 0] as const;

export const VECTORS: readonly FlightVector[] = [
  { id: 'A', launch: [70, 12, 2600, 0, 0], air: PLAIN, wind: [0, 0], targetHeightM: 0, carryM: 230.94, sideM: 0, apexM: 28.75, apexAtM: 148.67, timeS: 6.455, descentDeg: 37.71, landingMps: 28.8, landingRpm: 2067 },
  { id: 'B', launch: [60, 14, 5000, 0, 8], air: PLAIN, wind: [0, 0], targetHeightM: 0, carryM: 176.01, sideM: 13.51, apexM: 30.63, apexAtM: 116.79, timeS: 6.566, descentDeg: 46.48, landingMps: 24.28, landingRpm: 4169 },
  { id: 'C', launch: [52, 17, 6000, 0, 0], air: [25, 0, 0.5], wind: [-5, 0], targetHeightM: 0, carryM: 127.81, sideM: 0, apexM: 31.22, apexAtM: 90.68, timeS: 6.527, descentDeg: 60.35, landingMps: 20.73, landingRpm: 5091 },
  { id: 'D', launch: [52, 17, 6000, 0, 0], air: [25, 0, 0.5], wind: [5, 0], targetHeightM: 0, carryM: 156.4, sideM: 0, apexM: 23.75, apexAtM: 94.12, timeS: 5.497, descentDeg: 37.04, landingMps: 26.21, landingRpm: 5282 },
  { id: 'E', launch: [46, 21, 7500, 2, -4], air: [5, 1500, 0.3], wind: [2, 4], targetHeightM: 0, carryM: 128.28, sideM: 9.57, apexM: 23.81, apexAtM: 77.41, timeS: 5.347, descentDeg: 42.68, landingMps: 23.96, landingRpm: 6738 },
  { id: 'F', launch: IRON, air: PLAIN, wind: [0, 0], targetHeightM: 10, carryM: 106.71, sideM: 0, apexM: 26.07, apexAtM: 73.21, timeS: 4.967, descentDeg: 44.29, landingMps: 19.71, landingRpm: 6712 },
  { id: 'G', launch: IRON, air: PLAIN, wind: [0, 0], targetHeightM: -10, carryM: 123.99, sideM: 0, apexM: 26.07, apexAtM: 73.21, timeS: 6.191, descentDeg: 52.35, landingMps: 23.43, landingRpm: 6545 },
  { id: 'H', launch: [35, 28, 8000, 0, 0], air: PLAIN, wind: [0, 4.4704], targetHeightM: 0, carryM: 80.12, sideM: 7.42, apexM: 19.06, apexAtM: 47.48, timeS: 4.583, descentDeg: 48.33, landingMps: 20.1, landingRpm: 7329 },
];
