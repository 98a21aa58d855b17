/**
 * Measured flights that the model is held against: means of groups of shots from public radar statistics of tournament play, 2007 to 2023,
 * with the launch, the air's density as estimated (+-1.5 %; viscosity as at 15 °C) and the fitted wind. `error` is model less observed as first
 * computed by an independent implementation. Only these means are kept.
 */
export interface MeasuredGroup {
  readonly group: number;
  readonly shots: number;
  readonly what: string;
  readonly speedMph: number;
  readonly launchDeg: number;
  readonly spinRpm: number;
  readonly densityKgM3: number;
  /** Wind along the line at 10 m, towards the target; drives both ways along one line are the mean of two flights. */
  readonly tailMps?: number;
  readonly bothWaysMps?: number;
  readonly carryYd?: Observed;
  readonly apexFt?: Observed;
  readonly apexAtYd?: Observed;
  readonly timeS?: Observed;
}

export interface Observed {
  readonly observed: number;
  readonly error: number;
  /** Left out of the totals: times that end before the ball lands, and carries that were only inferred. */
  readonly weak?: true;
}

type Row = readonly [
  group: number,
  shots: number,
  what: string,
  mph: number,
  deg: number,
  rpm: number,
  density: number,
  figures: Pick<MeasuredGroup, 'carryYd' | 'apexFt' | 'apexAtYd' | 'timeS' | 'tailMps' | 'bothWaysMps'>,
];

const o = (observed: number, error: number): Observed => ({ observed, error });
const weak = (observed: number, error: number): Observed => ({ observed, error, weak: true });

const SEASON = 'drives, season means';
const TEE = 'tee shots';
const LINE = 'tee shots of one hole';
const HIGH = 'irons, 850 m up';

const ROWS: readonly Row[] = [
  [1, 577, SEASON, 165.7, 11.1, 2724, 1.175, { carryYd: o(268.5, 4.2), apexFt: o(90.9, 9.8), apexAtYd: o(178.9, -1.3), timeS: weak(6.22, 0.5) }],
  [2, 569, SEASON, 167.2, 10.8, 2694, 1.175, { carryYd: o(272.2, 2.7), apexFt: o(93.5, 6.2), apexAtYd: o(182.2, -2.8), timeS: weak(6.23, 0.48) }],
  [3, 541, SEASON, 168.0, 10.9, 2620, 1.175, { carryYd: o(275.4, 1.7), apexFt: o(98.8, 1.5), apexAtYd: o(183.3, -2.9), timeS: weak(6.24, 0.47) }],
  [4, 375, SEASON, 168.7, 10.8, 2560, 1.175, { carryYd: o(277.3, 1.0), apexFt: o(102.5, -3.3), apexAtYd: o(182.5, -1.5), timeS: weak(6.27, 0.41) }],
  [5, 381, SEASON, 170.3, 10.5, 2636, 1.175, { carryYd: o(279.4, 1.2), apexFt: o(103.0, -2.3), apexAtYd: o(184.5, -1.1), timeS: weak(6.36, 0.4) }],
  [6, 389, SEASON, 171.0, 10.4, 2532, 1.175, { carryYd: o(281.5, 0.4), apexFt: o(101.5, -2.6), apexAtYd: o(184.5, -0.8), timeS: weak(6.43, 0.26) }],
  [7, 386, SEASON, 172.9, 10.4, 2578, 1.175, { carryYd: o(284.5, 1.1), apexFt: o(101.6, 0.7), apexAtYd: o(185.9, 0.9), timeS: weak(6.38, 0.42) }],
  [8, 502, 'drives both ways along one line', 168.2, 9.6, 2600, 1.178, { bothWaysMps: 4, carryYd: o(266.7, 4.6), apexFt: o(88.0, 1.5), apexAtYd: o(176.9, 0.5), timeS: o(6.44, 0.02) }],
  [9, 38, TEE, 122.2, 17.1, 7776, 1.125, { apexFt: o(103.7, 0.7), apexAtYd: o(106.4, -1.1) }],
  [10, 169, TEE, 135.3, 14.3, 6371, 1.125, { apexFt: o(110.8, -0.2), apexAtYd: o(126.1, 1.6) }],
  [11, 249, TEE, 144.4, 11.3, 5233, 1.125, { apexFt: o(101.4, -1.5), apexAtYd: o(142.8, 3.2) }],
  [12, 155, TEE, 154.8, 9.8, 3839, 1.125, { apexFt: o(94.9, -5.7), apexAtYd: o(163.7, 0.1) }],
  [13, 459, TEE, 170.7, 10.3, 2755, 1.125, { apexFt: o(102.2, -2.8), apexAtYd: o(187.9, -1.5) }],
  [14, 197, TEE, 179.8, 10.2, 2551, 1.125, { apexFt: o(110.0, -2.2), apexAtYd: o(200.9, -1.6) }],
  [15, 119, LINE, 107.6, 22.4, 9423, 1.197, { tailMps: 1.4, carryYd: o(136.6, -3.9), timeS: o(5.82, 0) }],
  [16, 120, LINE, 124.1, 18.3, 7518, 1.197, { tailMps: 1.35, carryYd: o(170.2, -5.9), timeS: o(6.33, 0.12) }],
  [17, 115, LINE, 125.3, 16.6, 6885, 1.197, { tailMps: -1.0, carryYd: o(162.9, -2.3), timeS: o(6.51, 0.1) }],
  [18, 94, LINE, 151.2, 10.7, 4333, 1.197, { tailMps: -0.95, carryYd: o(224.1, 2.5), timeS: o(6.89, 0.05) }],
  [19, 225, 'tee shots, 18 directions', 155.1, 10.3, 3495, 1.197, { carryYd: o(240.0, 4.3), timeS: o(6.68, -0.08) }],
  [20, 717, 'drives, 18 directions', 168.0, 10.7, 2673, 1.197, { carryYd: o(272.0, 2.3), timeS: o(6.73, 0.02) }],
  [21, 297, 'drives, 18 directions', 176.6, 9.6, 2600, 1.197, { carryYd: o(283.9, 4.5), timeS: o(6.77, 0.09) }],
  [22, 272, HIGH, 114.6, 20.2, 8746, 1.085, { carryYd: weak(150.9, -3.1), timeS: o(6.17, 0) }],
  [23, 424, HIGH, 122.8, 18.2, 6955, 1.085, { carryYd: weak(165.6, 4.3), timeS: o(6.45, 0.02) }],
  [24, 688, HIGH, 131.2, 15.8, 5685, 1.085, { carryYd: weak(189.7, 4.7), timeS: o(6.56, 0.07) }],
  [25, 268, HIGH, 141.7, 13.1, 4613, 1.085, { carryYd: weak(216.5, 6.5), timeS: o(6.79, -0.14) }],
  [26, 5356, 'drives, 850 m up', 167.5, 11.0, 2804, 1.085, { timeS: o(6.78, -0.08) }],
  [27, 5522, 'drives, 850 m up', 168.7, 10.5, 2771, 1.094, { timeS: o(6.83, -0.18) }],
  [28, 612, HIGH, 123.2, 16.9, 6999, 1.094, { carryYd: weak(164.1, 5.9), timeS: o(6.3, 0.08) }],
  [29, 207, HIGH, 130.2, 16.0, 5831, 1.094, { carryYd: weak(186.8, 3.8), timeS: o(6.39, 0.22) }],
  [30, 673, HIGH, 137.8, 13.3, 5001, 1.094, { carryYd: weak(202.5, 8.8), timeS: o(6.69, -0.11) }],
];

export const MEASURED: readonly MeasuredGroup[] = ROWS.map(
  ([group, shots, what, speedMph, launchDeg, spinRpm, densityKgM3, figures]) => ({ group, shots, what, speedMph, launchDeg, spinRpm, densityKgM3, ...figures }),
);
