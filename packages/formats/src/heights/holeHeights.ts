import { type GeoPoint, type Heights, heightsOver, type HoleGround, LEAST_SPOTS, throughSpots } from '@leeway/engine';
import type { MapFeature } from '../ground/feature.ts';
import type { HeightRaster } from './asciiGrid.ts';

/** A spot height on a map. */
export interface Spot {
  readonly at: GeoPoint;
  readonly heightM: number;
}

/** Heights are kept so far beyond a hole's line. */
const BEYOND_M = 150;
/** Spot heights count so far from the line. */
const SPOTS_WITHIN_M = 300;
/** Nothing on land is higher or lower. */
const POSSIBLE_M = [-450, 9000] as const;

/** Spot heights: points of any kind with a tag `ele` in metres. */
export const spotsOf = (features: readonly MapFeature[]): Spot[] =>
  features.flatMap(({ shape, tags }) => {
    const text = tags.get('ele');
    const heightM = Number(text?.replace(/\s*m$/, ''));
    const possible = text !== undefined && text !== '' && heightM >= POSSIBLE_M[0] && heightM <= POSSIBLE_M[1];
    return shape.kind === 'point' && possible ? [{ at: shape.at, heightM }] : [];
  });

/** The hole with the heights of its ground: from a raster where there is one, else from spot heights, of which there must be three near it. */
export function withHeights(hole: HoleGround, spots: readonly Spot[], raster: HeightRaster | undefined): HoleGround {
  const heights = heightsFor(hole, spots, raster);
  return heights === undefined ? hole : { ...hole, heights };
}

function heightsFor(hole: HoleGround, spots: readonly Spot[], raster: HeightRaster | undefined): Heights | undefined {
  const east = hole.line.map((p) => p.eastM);
  const north = hole.line.map((p) => p.northM);
  const box = {
    westM: Math.min(...east) - BEYOND_M,
    eastM: Math.max(...east) + BEYOND_M,
    southM: Math.min(...north) - BEYOND_M,
    northM: Math.max(...north) + BEYOND_M,
  };
  if (raster !== undefined) return heightsOver(box, (p) => raster(hole.frame.toGeo(p)), 'raster');
  const more = SPOTS_WITHIN_M - BEYOND_M;
  const near = spots
    .map(({ at, heightM }) => ({ at: hole.frame.toPlane(at), heightM }))
    .filter(
      ({ at }) =>
        at.eastM > box.westM - more &&
        at.eastM < box.eastM + more &&
        at.northM > box.southM - more &&
        at.northM < box.northM + more,
    );
  return near.length < LEAST_SPOTS ? undefined : heightsOver(box, throughSpots(near), 'spot heights');
}
