import type { GeoPoint } from '@leeway/engine';
import type { Tags } from './feature.ts';

/** Points of a way in order; undefined where the file does not hold the node. */
export type WayPoints = readonly (GeoPoint | undefined)[];

export interface OsmNode {
  readonly id: string;
  readonly tags: Tags;
  readonly at: GeoPoint;
}

export interface OsmWay {
  readonly id: string;
  readonly tags: Tags;
  readonly points: WayPoints;
}

export interface OsmMember {
  readonly type: string;
  readonly ref: string;
  readonly role: string;
  /** Some query results give a member's points in the relation itself. */
  readonly points?: WayPoints;
}

export interface OsmRelation {
  readonly id: string;
  readonly tags: Tags;
  readonly members: readonly OsmMember[];
}

/** The content of OSM data, from XML or JSON. Nodes that only shape ways are already in the ways. */
export interface OsmData {
  readonly nodes: readonly OsmNode[];
  readonly ways: ReadonlyMap<string, OsmWay>;
  readonly relations: readonly OsmRelation[];
}

export const samePlace = (a: GeoPoint | undefined, b: GeoPoint | undefined): boolean =>
  a !== undefined && b !== undefined && a.lon === b.lon && a.lat === b.lat;

export const isWhole = (points: WayPoints): points is readonly GeoPoint[] => points.every((p) => p !== undefined);
