import type { GeoPoint } from '@leeway/engine';
import type { GeoBox } from './geoBox.ts';
import type { Piece } from './piece.ts';

/** A hole line with its number, running from tee to green. */
export interface HoleLine {
  readonly id: string;
  /** The number as mapped, or found; an id when there is none. */
  readonly ref: string;
  /** How the hole is asked for: its number, with the course before it where a site has several. */
  readonly hole: string;
  readonly course?: string;
  readonly piece: Piece;
  readonly points: readonly GeoPoint[];
  readonly box: GeoBox;
  readonly green?: Piece;
}
