/** A place on a hole as it is drawn: metres right of the line from tee to flag, and metres up it from the tee. */
export type DrawnPoint = readonly [rightM: number, upM: number];

/** One drawn feature: corners of an outline or a line, or one point, with its map tags. */
export interface DrawnFeature {
  readonly id: string;
  readonly shape: 'outline' | 'line' | 'point';
  readonly points: readonly DrawnPoint[];
  /** Outlines and lines are rounded between the drawn corners unless they were surveyed straight. */
  readonly straight?: boolean;
  readonly tags: { readonly [key: string]: string };
}

/** A made-up hole. Its sheet has its tee at (0, 0); `tee` says where that is on the Earth, and `bearingDeg` which way is up. */
export interface DrawnHole {
  readonly tee: { readonly lon: number; readonly lat: number };
  readonly bearingDeg: number;
  readonly features: readonly DrawnFeature[];
}
