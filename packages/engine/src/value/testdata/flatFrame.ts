import type { Frame } from '../../ground/hole.ts';

/** A frame for made-up flat holes: a ten-thousandth of a degree is ten metres. For tests only. */
const DEG_PER_M = 1e-5;
export const flatFrame: Frame = {
  origin: { lon: 0, lat: 0 },
  toPlane: (p) => ({ eastM: p.lon / DEG_PER_M, northM: p.lat / DEG_PER_M }),
  toGeo: (p) => ({ lon: p.eastM * DEG_PER_M, lat: p.northM * DEG_PER_M }),
};
