import type { PlanePoint } from '../quantity/points.ts';

/**
 * The frame the solver works in: origin at the flag, `v` metres on along ball -> flag, `u` metres to its right.
 * Turning or moving a hole on the Earth then changes nothing at all, and the grid lies along the hole.
 */
export interface PlayFrame {
  /** Bearing of the v axis, radians clockwise from north. */
  readonly bearingRad: number;
  u(p: PlanePoint): number;
  v(p: PlanePoint): number;
  toPlane(u: number, v: number): PlanePoint;
}

export function playFrame(ball: PlanePoint, flag: PlanePoint): PlayFrame {
  const east = flag.eastM - ball.eastM;
  const north = flag.northM - ball.northM;
  const length = Math.hypot(east, north) || 1;
  const onE = length > 0 ? east / length : 0;
  const onN = length > 0 ? north / length : 1;
  return {
    bearingRad: Math.atan2(onE, onN),
    u: (p) => (p.eastM - flag.eastM) * onN - (p.northM - flag.northM) * onE,
    v: (p) => (p.eastM - flag.eastM) * onE + (p.northM - flag.northM) * onN,
    toPlane: (u, v) => ({ eastM: flag.eastM + u * onN + v * onE, northM: flag.northM - u * onE + v * onN }),
  };
}
