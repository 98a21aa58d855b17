import type { PlanePoint } from '@leeway/engine';
import { placeAt } from '@leeway/engine';
import type { Placing, Xy } from './marks.ts';

/** The ground under a place on a sheet. */
export const groundAt = ({ origin, pxPerM, upRad }: Placing, q: Xy): PlanePoint =>
  placeAt({ eastM: 0, northM: 0 }, upRad, (origin.y - q.y) / pxPerM, (q.x - origin.x) / pxPerM);
