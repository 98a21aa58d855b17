/** Below this height the wind is held: it changes a carry by less than .25 m in 20 mph, and spares the integrator a singularity. */
const HELD_BELOW_M = 1;

/**
 * The neutral logarithmic law: at height y the wind is U ln((y + z0) / z0) / ln((y_ref + z0) / z0), U blowing at y_ref over ground of
 * roughness z0 (open grass .03 m, hedges and scattered trees .25, parkland .5). This is the ratio to U; metres throughout.
 */
export const windShare = (heightM: number, measuredAtM: number, roughnessM: number): number =>
  logHeight(heightM, roughnessM) / logHeight(measuredAtM, roughnessM);

/** ln((y + z0) / z0), held below a metre. */
export const logHeight = (heightM: number, roughnessM: number): number =>
  Math.log((Math.max(heightM, HELD_BELOW_M) + roughnessM) / roughnessM);
