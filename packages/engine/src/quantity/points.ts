/** A place on the Earth: WGS 84 degrees. */
export interface GeoPoint {
  readonly lon: number;
  readonly lat: number;
}

/** A place in the tangent plane of a hole: metres east and north of its origin. */
export interface PlanePoint {
  readonly eastM: number;
  readonly northM: number;
}
