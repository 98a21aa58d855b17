import { frameAt, type GeoPoint, type Heights, type HoleGround } from '@leeway/engine';
import type { ShotRow } from './shots.ts';

/** A hole as it is sent: all of it but the functions of its frame; its heights as a plain list. */
export interface SentHole {
  readonly course?: string;
  readonly attribution?: string;
  readonly hole: Omit<HoleGround, 'frame' | 'heights'> & {
    readonly frame: { readonly origin: GeoPoint };
    readonly heights?: Omit<Heights, 'heightM'> & { readonly heightM: readonly number[] };
  };
}

/** A recorded ball as it is sent. */
export type SentBall = Pick<ShotRow, 'club' | 'swing' | 'date' | 'carryM' | 'sideM'>;

/** A hole of a ground that was read, as it is sent. */
export function sentHole(of: Pick<SentHole, 'course' | 'attribution'>, ground: HoleGround): SentHole {
  const { heights, frame, ...hole } = ground;
  return {
    ...(of.course === undefined ? {} : { course: of.course }),
    ...(of.attribution === undefined ? {} : { attribution: of.attribution }),
    hole: {
      ...hole,
      frame: { origin: frame.origin },
      ...(heights === undefined ? {} : { heights: { ...heights, heightM: [...heights.heightM] } }),
    },
  };
}

/** The inverse of sending: JSON keeps every figure to the last digit, so the hole is the very same. */
export function receivedHole({ hole: { heights, ...hole } }: SentHole): HoleGround {
  return {
    ...hole,
    frame: frameAt(hole.frame.origin),
    ...(heights === undefined ? {} : { heights: { ...heights, heightM: Float32Array.from(heights.heightM) } }),
  };
}
