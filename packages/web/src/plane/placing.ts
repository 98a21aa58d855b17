import type { Placing, Xy } from '@leeway/chart';
import type { PlanePoint } from '@leeway/engine';

/** The frame of a sheet: nothing of the play is drawn on it. */
export const FRAME_PX = 13;

/** Where a place of the hole's plane lies on a sheet. */
export function toPaper({ origin, pxPerM, upRad }: Placing, p: PlanePoint): Xy {
  const [sin, cos] = [Math.sin(upRad), Math.cos(upRad)];
  return {
    x: origin.x + (p.eastM * cos - p.northM * sin) * pxPerM,
    y: origin.y - (p.eastM * sin + p.northM * cos) * pxPerM,
  };
}

/** The place of the hole's plane under a place of a sheet. */
export function toPlane({ origin, pxPerM, upRad }: Placing, at: Xy): PlanePoint {
  const [sin, cos] = [Math.sin(upRad), Math.cos(upRad)];
  const acrossM = (at.x - origin.x) / pxPerM;
  const alongM = (origin.y - at.y) / pxPerM;
  return { eastM: acrossM * cos + alongM * sin, northM: alongM * cos - acrossM * sin };
}

/** A place moved by metres up and to the right of a sheet. */
export function nudged({ upRad }: Placing, p: PlanePoint, rightM: number, upM: number): PlanePoint {
  const [sin, cos] = [Math.sin(upRad), Math.cos(upRad)];
  return { eastM: p.eastM + rightM * cos + upM * sin, northM: p.northM + upM * cos - rightM * sin };
}
