import { type Ball, RAD_PER_DEG } from '@leeway/engine';
import type { OnReferenceDay } from './referenceDay.ts';

/** A ball's direction is known when its side was, and lies within its carry: sin(direction) = side / carry. */
export function ballOf({ carryM, sideM, seCarryM, seDirectionDeg }: OnReferenceDay): Ball {
  const erred = seCarryM === undefined ? {} : { seCarryM };
  if (sideM === undefined || Math.abs(sideM) > carryM || carryM === 0) return { carryM, ...erred };
  const turned = seDirectionDeg === undefined ? {} : { seDirectionDeg };
  return { carryM, directionDeg: Math.asin(sideM / carryM) / RAD_PER_DEG, ...erred, ...turned };
}
