import {
  type Day,
  descentDeg,
  type Flight,
  headingDeg,
  landingSpeedMps,
  type Launch,
  RAD_PER_DEG,
  type RunOut,
  SURFACES,
} from '@leeway/engine';
import * as z from 'zod';
import { dayDocument, daySchema } from './day.ts';

/** Version of the fly document; it rises when a field changes its meaning or goes. */
export const FLY_VERSION = 1;

/** What `leeway fly --json` prints. Metres from the ball: along the target line, to its right, above the ball. */
export const flySchema = z.strictObject({
  version: z.literal(FLY_VERSION),
  day: daySchema,
  launch: z.strictObject({
    speedMps: z.number().positive(),
    launchDeg: z.number(),
    spinRpm: z.number().min(0),
    /** Tilt of the spin axis; positive bends to the right. */
    axisDeg: z.number(),
    /** Start direction, to the right of the target line. */
    azimuthDeg: z.number(),
  }),
  /** Bearing of the target line, from true north. */
  bearingDeg: z.number(),
  targetHeightM: z.number(),
  carryM: z.number(),
  sideM: z.number(),
  apexM: z.number(),
  apexAtM: z.number(),
  timeS: z.number().min(0),
  descentDeg: z.number(),
  landingSpeedMps: z.number().min(0),
  landingSpinRpm: z.number().min(0),
  /** From landing to rest on `surface`, on in the direction that the ball landed in; below nought when it comes back. */
  runM: z.number(),
  /** Where it rests: along the target line and to its right. */
  restM: z.number(),
  restSideM: z.number(),
  surface: z.enum(SURFACES),
  /** What nobody told and was taken as usual. */
  assumed: z.array(z.enum(['firmness', 'green speed', 'surface'])),
});
export type FlyDocument = z.infer<typeof flySchema>;

export const flyJsonSchema = (): object => ({ title: 'Fly', ...z.toJSONSchema(flySchema) });

/** A ball flown and run out. */
export interface Flown {
  readonly day: Day;
  readonly launch: Launch;
  readonly bearingDeg: number;
  readonly targetHeightM: number;
  readonly flight: Flight;
  readonly run: RunOut;
  readonly surface: FlyDocument['surface'];
  readonly assumed: FlyDocument['assumed'];
}

const DECIMALS = 4;

/** A flown ball as its document. */
export function flyDocument(flown: Flown): FlyDocument {
  const { flight, launch } = flown;
  const { runM } = flown.run;
  const heading = headingDeg(flight) * RAD_PER_DEG;
  return {
    version: FLY_VERSION,
    day: dayDocument(flown.day),
    launch: {
      speedMps: rounded(launch.speedMps),
      launchDeg: rounded(launch.launchDeg),
      spinRpm: rounded(launch.spinRpm),
      axisDeg: rounded(launch.axisDeg ?? 0),
      azimuthDeg: rounded(launch.azimuthDeg ?? 0),
    },
    bearingDeg: rounded(flown.bearingDeg),
    targetHeightM: rounded(flown.targetHeightM),
    carryM: rounded(flight.carryM),
    sideM: rounded(flight.sideM),
    apexM: rounded(flight.apexM),
    apexAtM: rounded(flight.apexAtM),
    timeS: rounded(flight.timeS),
    descentDeg: rounded(descentDeg(flight)),
    landingSpeedMps: rounded(landingSpeedMps(flight)),
    landingSpinRpm: rounded(flight.landingSpinRpm),
    runM: rounded(runM),
    restM: rounded(flight.carryM + runM * Math.cos(heading)),
    restSideM: rounded(flight.sideM + runM * Math.sin(heading)),
    surface: flown.surface,
    assumed: flown.assumed,
  };
}

/** To a tenth of a millimetre, and without a nought that has a sign. */
const rounded = (value: number): number => Number(value.toFixed(DECIMALS)) + 0;
