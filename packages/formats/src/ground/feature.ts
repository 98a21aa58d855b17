import type { GeoPoint } from '@leeway/engine';

export type Tags = ReadonlyMap<string, string>;

/** A ring on the Earth, its first point not repeated at the end. */
export type GeoRing = readonly GeoPoint[];

export interface GeoPolygon {
  readonly outer: GeoRing;
  readonly inner: readonly GeoRing[];
}

export type Shape =
  | { readonly kind: 'point'; readonly at: GeoPoint }
  | { readonly kind: 'line'; readonly points: readonly GeoPoint[] }
  | { readonly kind: 'area'; readonly polygons: readonly GeoPolygon[] };

/** One thing on a map, whatever file it came from: its id there, its tags and its shape. */
export interface MapFeature {
  readonly id: string;
  readonly tags: Tags;
  readonly shape: Shape;
}

/** A named set of features, such as one course of several on a site. */
export interface MapGroup {
  readonly id: string;
  readonly tags: Tags;
  readonly members: readonly string[];
}

/** A map file, read but not yet understood. */
export interface MapFile {
  readonly features: readonly MapFeature[];
  readonly groups: readonly MapGroup[];
  /** Its positions are bare pairs of numbers, whose order may be mistaken. */
  readonly pairs: boolean;
  readonly attribution?: string;
}

/** What the Open Database Licence asks to be shown with everything made from its map data. */
export const OSM_ATTRIBUTION =
  'Map data © OpenStreetMap contributors, available under the Open Database Licence: openstreetmap.org/copyright';

/** The points of a shape, every ring included. */
export function pointsOf(shape: Shape): readonly GeoPoint[] {
  if (shape.kind === 'point') return [shape.at];
  if (shape.kind === 'line') return shape.points;
  return shape.polygons.flatMap((p) => [p.outer, ...p.inner].flat());
}
