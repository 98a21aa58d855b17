import { YARD_M } from '../../quantity/units.ts';
import { calibrate } from '../calibrate.ts';
import { launchFamily } from '../family.ts';
import type { FlightAir, Launch } from '../launch.ts';

/** Mile = 1.609344 km, exactly. */
export const MPH_MPS = 0.44704;

/** Calm air of 15 °C, sea level, 50 % humidity: density to four places, viscosity by Sutherland's law. */
export const AIR_15C: FlightAir = {
  densityKgM3: 1.22155,
  viscosityPaS: 1.7894e-5,
  tailMps: 0,
  rightMps: 0,
  windHeightM: 10,
  roughnessM: 0.03,
};

export const launchOf = (mph: number, launchDeg: number, spinRpm: number): Launch => ({
  speedMps: mph * MPH_MPS,
  launchDeg,
  spinRpm,
});

/** The launch that a carry in yards and a loft stand for in that air. */
export function launchFor(carryYd: number, loftDeg: number, air = AIR_15C): Launch {
  const found = calibrate(launchFamily(loftDeg), carryYd * YARD_M, loftDeg, { air });
  if (found.status !== 'found') throw new Error(`no launch for ${carryYd} yd with ${loftDeg} degrees`);
  return found.launch;
}
