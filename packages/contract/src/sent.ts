import { frameAt, type GeoPoint, type HoleGround } from '@leeway/engine';
import type { ShotRow } from './shots.ts';

/** A hole as it is sent: all of it but the functions of its frame. */
export interface SentHole {
  readonly course?: string;
  readonly attribution?: string;
  readonly hole: Omit<HoleGround, 'frame'> & { readonly frame: { readonly origin: GeoPoint } };
}

/** A recorded ball as it is sent. */
export type SentBall = Pick<ShotRow, 'club' | 'swing' | 'date' | 'carryM' | 'sideM'>;

/** The inverse of sending: JSON keeps every figure to the last digit, so the hole is the very same. */
export const receivedHole = ({ hole }: SentHole): HoleGround => ({ ...hole, frame: frameAt(hole.frame.origin) });
