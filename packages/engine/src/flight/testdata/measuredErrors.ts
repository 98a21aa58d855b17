import { FOOT_M, YARD_M } from '../../quantity/units.ts';
import { fly } from '../fly.ts';
import type { Flight, FlightAir } from '../launch.ts';
import { MEASURED, type MeasuredGroup } from './measured.ts';

/** The figures that a group may have. */
export const FIGURES = ['carryYd', 'apexFt', 'apexAtYd', 'timeS'] as const;
export type Figure = (typeof FIGURES)[number];

/** What the model gives for a measured group. */
export type Modelled = { readonly [F in Figure]: number };

/** Mile = 1760 yd, exactly. */
const MPH_MPS = (1760 * YARD_M) / 3600;
/** Sutherland's viscosity at 15 °C. */
const VISCOSITY_15C_PAS = 1.7894e-5;

/** Flies the group's mean launch in its air; a group both ways is the mean of two flights. */
export function modelled(g: MeasuredGroup): Modelled {
  const flights = g.bothWaysMps === undefined ? [flight(g, g.tailMps ?? 0)] : [flight(g, g.bothWaysMps), flight(g, -g.bothWaysMps)];
  const mean = (of: (f: Flight) => number): number => flights.reduce((sum, f) => sum + of(f), 0) / flights.length;
  return {
    carryYd: mean((f) => f.carryM) / YARD_M,
    apexFt: mean((f) => f.apexM) / FOOT_M,
    apexAtYd: mean((f) => f.apexAtM) / YARD_M,
    timeS: mean((f) => f.timeS),
  };
}

/** A group's mean launch in its air, or in air of another density. */
export function flight(g: MeasuredGroup, tailMps: number, densityKgM3 = g.densityKgM3): Flight {
  const air: FlightAir = {
    densityKgM3,
    viscosityPaS: VISCOSITY_15C_PAS,
    tailMps,
    rightMps: 0,
    windHeightM: 10,
    roughnessM: 0.03,
  };
  return fly({ speedMps: g.speedMph * MPH_MPS, launchDeg: g.launchDeg, spinRpm: g.spinRpm }, air);
}

/** Mean and root mean square of a figure's errors over the groups that count. */
export function totals(figure: Figure): { readonly n: number; readonly bias: number; readonly rms: number } {
  const errors = MEASURED.flatMap((g) => {
    const seen = g[figure];
    return seen === undefined || seen.weak ? [] : [modelled(g)[figure] - seen.observed];
  });
  const n = errors.length;
  const bias = errors.reduce((sum, e) => sum + e, 0) / n;
  return { n, bias, rms: Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / n) };
}
