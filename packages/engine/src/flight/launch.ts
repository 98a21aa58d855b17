/**
 * How a ball leaves: speed, angle above the horizon, spin, the tilt of the spin axis (positive bends the flight to the right) and the
 * direction to the right of the target line.
 */
export interface Launch {
  readonly speedMps: number;
  readonly launchDeg: number;
  readonly spinRpm: number;
  readonly axisDeg?: number;
  readonly azimuthDeg?: number;
}

/**
 * The air of one flight: its density and viscosity, and the wind along the target line and to its right (both as blowing towards),
 * measured `windHeightM` over ground of roughness `roughnessM`.
 */
export interface FlightAir {
  readonly densityKgM3: number;
  readonly viscosityPaS: number;
  readonly tailMps: number;
  readonly rightMps: number;
  readonly windHeightM: number;
  readonly roughnessM: number;
}

/** Where and how a ball comes down. Metres from the ball along the target line, above it and to its right. */
export interface Flight {
  /** False when the ball never rises to the target's height: only the apex is told then, and the rest is NaN. */
  landed: boolean;
  carryM: number;
  sideM: number;
  apexM: number;
  apexAtM: number;
  timeS: number;
  /** Velocity at landing: along the target line, upwards (so below nought) and to the right. */
  alongMps: number;
  upMps: number;
  rightMps: number;
  landingSpinRpm: number;
}

/** A record for a flight to be written into. */
export const emptyFlight = (): Flight => ({
  landed: false,
  carryM: Number.NaN,
  sideM: Number.NaN,
  apexM: Number.NaN,
  apexAtM: Number.NaN,
  timeS: Number.NaN,
  alongMps: Number.NaN,
  upMps: Number.NaN,
  rightMps: Number.NaN,
  landingSpinRpm: Number.NaN,
});

/** Speed at landing. */
export const landingSpeedMps = (f: Flight): number => Math.hypot(f.alongMps, f.upMps, f.rightMps);

/** Direction over the ground at landing, degrees to the right of the target line: the way the ball runs on. */
export const headingDeg = (f: Flight): number => (Math.atan2(f.rightMps, f.alongMps) * 180) / Math.PI;

/** Angle below the horizon at landing, degrees. */
export const descentDeg = (f: Flight): number =>
  (Math.atan2(-f.upMps, Math.hypot(f.alongMps, f.rightMps)) * 180) / Math.PI;
