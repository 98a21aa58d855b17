const KELVIN = 273.15;

/**
 * Density of moist air, kg/m^3 (CIPM-2007: Picard and others, Metrologia 45 (2008) 149), from the temperature, the pressure where the
 * ball is, and the relative humidity, 0 to 1. Stated for 600 to 1100 hPa and 15 to 27 °C; sound well beyond for a flight.
 */
export function airDensityKgM3(temperatureC: number, stationPa: number, humidity: number): number {
  const t = temperatureC;
  const kelvin = t + KELVIN;
  const p = stationPa;
  const saturated = Math.exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6343.1645 / kelvin);
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const x = (humidity * enhancement * saturated) / p;
  const compressibility =
    1 -
    (p / kelvin) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * x +
        (1.9898e-4 - 2.376e-6 * t) * x * x) +
    (p / kelvin) ** 2 * (1.83e-11 - 0.765e-8 * x * x);
  return ((p * 0.02896546) / (compressibility * 8.314472 * kelvin)) * (1 - 0.378 * x);
}

/** Pressure at a height above the sea from the pressure reduced to sea level: p (1 - .0065 h / 288.15)^5.255876 (ISA). */
export const stationPressure = (seaLevel: number, altitudeM: number): number =>
  seaLevel * (1 - (0.0065 * altitudeM) / 288.15) ** 5.255876;

/** Viscosity of air, Pa s, by Sutherland's law: 1.458e-6 T^1.5 / (T + 110.4), T in kelvin. */
export function airViscosityPaS(temperatureC: number): number {
  const kelvin = temperatureC + KELVIN;
  return (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
}
