import * as z from 'zod';

/** The small parts that stored shapes are made of. */

/** An id made at the client: a UUID in lower case, so that no id can hold a name. */
export const idSchema = z.string().regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/);

export const nameSchema = z.string().trim().min(1).max(80);

/** A day of the calendar where the ball was hit: `2026-05-14`. */
export const dateSchema = z.iso.date();

/** Weather as it stood or was forecast. Wind at 10 m, bearings from true north, pressure as measured at the place. */
export const daySchema = z.strictObject({
  windMps: z.number().min(0).max(60).exactOptional(),
  windFromDeg: z.number().min(0).max(360).exactOptional(),
  temperatureC: z.number().min(-40).max(60).exactOptional(),
  pressureHpa: z.number().min(500).max(1100).exactOptional(),
  humidityPercent: z.number().min(0).max(100).exactOptional(),
});

/** A place on the Earth, or one in metres measured from the flag or from the green's edge. */
export const placeSchema = z.union([
  z.strictObject({ lon: z.number().min(-180).max(180), lat: z.number().min(-90).max(90) }),
  z.strictObject({ beyondFlagM: z.number(), rightOfFlagM: z.number() }),
  z.strictObject({ onFromFrontM: z.number(), inFromRightM: z.number() }),
]);
