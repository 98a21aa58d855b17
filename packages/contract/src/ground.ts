import type { HoleGround } from '@leeway/engine';

/** A ground file, read. */
export interface GroundFile {
  /** Name of the course, when one outline round the holes carries a name. */
  readonly course?: string;
  /** The line that must stand wherever the map, or what was made from it, is shown. */
  readonly attribution?: string;
  /** In order of their numbers. */
  readonly holes: readonly HoleGround[];
}

/** What a ground file holds, for `leeway check`. */
export interface GroundSummary {
  readonly features: number;
  /** Features by tag and shape: `{"golf=bunker|Polygon": 47}`, in order of the alphabet. */
  readonly counts: { readonly [tagAndShape: string]: number };
  readonly course?: string;
  readonly attribution?: string;
  readonly holes: readonly HoleSummary[];
}

export interface HoleSummary {
  readonly hole: string;
  readonly name?: string;
  readonly par: number;
  readonly parGuessed: boolean;
  /** Length of the hole line. */
  readonly lengthM: number;
  readonly flagFrom: HoleGround['flagFrom'];
  /** Areas of each surface that the hole is played over. */
  readonly areas: { readonly [surface: string]: number };
  readonly cautions: number;
}

/** Caps on ground files: a larger one is refused before its parts are looked at. */
export const GROUND_CAPS = {
  /** Characters of text; at one byte or more each, also the most bytes worth reading. */
  characters: 64e6,
  /** Positions of nodes and vertices together. */
  vertices: 2e6,
  features: 200_000,
} as const;
