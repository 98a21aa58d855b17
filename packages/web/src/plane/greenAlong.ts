import type { PlanePoint, Polygon } from '@leeway/engine';
import { bearingRad, offsetOf } from '@leeway/engine';

/** Where the line from a ball through the flag meets the front and the back of the green, in metres from the ball. */
export interface GreenAlong {
  readonly frontM: number;
  readonly backM: number;
}

/** Front and back of the green along the flag line; `undefined` when the ball is on the green, or the flag is not. */
export function greenAlong(ball: PlanePoint, flag: PlanePoint, green: readonly Polygon[]): GreenAlong | undefined {
  const bearing = bearingRad(ball, flag);
  const flagM = offsetOf(flag, ball, bearing).alongM;
  for (const { outer } of green) {
    const crossings: number[] = [];
    const ring = outer.map((p) => offsetOf(p, ball, bearing));
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] ?? a;
      if (a.acrossM > 0 === b.acrossM > 0) continue;
      crossings.push(a.alongM + ((b.alongM - a.alongM) * a.acrossM) / (a.acrossM - b.acrossM));
    }
    const frontM = Math.max(...crossings.filter((m) => m <= flagM));
    const backM = Math.min(...crossings.filter((m) => m >= flagM));
    if (Number.isFinite(frontM) && Number.isFinite(backM) && frontM > 0) return { frontM, backM };
  }
  return undefined;
}
