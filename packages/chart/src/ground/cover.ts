import type { Area, HoleGround, Polygon, Surface } from '@leeway/engine';
import { boxOf } from '@leeway/engine';
import type { Line, Xy } from '../marks.ts';
import { distancesTo } from '../plane/distances.ts';
import { cellOf, fillRings, type PxRaster } from '../plane/fillRings.ts';
import { grown, quadOf } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { chartedGround, mappedGround } from './mapped.ts';

/** Area numbers that are no areas: ground where nothing is painted, and ground that the map says nothing about. */
export const BARE = -1;
const UNMAPPED = -2;

/** The ground as it is seen on a sheet: what lies on top of each px of it, and a little beyond its edge. */
export interface Cover {
  readonly areas: readonly Area[];
  /** Index of the topmost area at a place of the sheet; `BARE` and `UNMAPPED` where none lies. */
  topAt(q: Xy): number;
  /** What is seen at a place: bare rough too; nothing beyond what is mapped. */
  surfaceAt(q: Xy): Surface | 'unmapped';
  /** Within 40 yd of an area, out of bounds apart, or of the hole line. */
  isMapped(q: Xy): boolean;
  /** Distance to the nearest water or ground out of bounds that is seen, nought on it: never more than it is, and less by 4 px at most. */
  toM(q: Xy, surface: 'penalty' | 'out'): number;
  /** Outlines of the ground that is mapped, and of what is charted of it, as rings on paper. */
  readonly mapped: readonly Line[];
  readonly charted: readonly Line[];
  isCharted(q: Xy): boolean;
}

/** Cells kept beyond the paper's edge, so that what is worked out near the edge sees across it. */
const BEYOND_PX = 24;
/** Distances are measured on cells of so many px. */
const COARSE = 2;

/** Polygons as rings on paper. */
export const ringsOn = (sheet: Sheet, polygons: readonly Polygon[]): Line[] =>
  polygons.flatMap((p) => [p.outer, ...p.inner]).map((ring) => ring.map((c) => sheet.toPaper(c)));

export function coverOf(ground: HoleGround, sheet: Sheet): Cover {
  const { areas } = ground;
  const raster: PxRaster = {
    left: -BEYOND_PX,
    top: -BEYOND_PX,
    columns: Math.ceil(sheet.size.widthPx) + 2 * BEYOND_PX,
    rows: Math.ceil(sheet.size.heightPx) + 2 * BEYOND_PX,
  };
  const paper = { left: 0, top: 0, right: sheet.size.widthPx, bottom: sheet.size.heightPx };
  const shown = boxOf(quadOf(grown(paper, BEYOND_PX)).map((q) => sheet.toPlane(q)));
  const mapped = ringsOn(sheet, mappedGround(ground, shown));
  const isMapped = new Uint8Array(raster.columns * raster.rows);
  const top = new Int16Array(isMapped.length).fill(UNMAPPED);
  fillRings(raster, mapped, (first, end) => {
    isMapped.fill(1, first, end);
    top.fill(BARE, first, end);
  });
  areas.forEach((area, i) =>
    fillRings(raster, ringsOn(sheet, [area.polygon]), (first, end) => top.fill(i, first, end)),
  );
  const charted = chartedGround(ground).map((ring) => ring.map((p) => sheet.toPaper(p)));
  const isCharted = new Uint8Array(isMapped.length);
  fillRings(raster, charted, (first, end) => isCharted.fill(1, first, end));
  const cell = (q: Xy): number => cellOf(raster, q.x, q.y);
  const surfaceOf = (index: number): Surface | 'unmapped' =>
    index === UNMAPPED ? 'unmapped' : (areas[index]?.surface ?? 'rough');
  const to = {
    penalty: distancesOf(raster, (i) => areas[top[i]!]?.surface === 'penalty'),
    out: distancesOf(raster, (i) => areas[top[i]!]?.surface === 'out'),
  };
  return {
    areas,
    mapped,
    charted,
    isCharted: (q) => isCharted[cell(q)] === 1,
    topAt: (q) => top[cell(q)]!,
    surfaceAt: (q) => surfaceOf(top[cell(q)]!),
    isMapped: (q) => isMapped[cell(q)] === 1,
    toM: (q, surface) => to[surface](q) / sheet.pxPerM,
  };
}

/** Distances, in px, to the cells of a raster that are meant. */
function distancesOf(raster: PxRaster, isMeant: (cell: number) => boolean): (q: Xy) => number {
  const coarse: PxRaster = {
    ...raster,
    columns: Math.floor(raster.columns / COARSE),
    rows: Math.floor(raster.rows / COARSE),
  };
  const mask = new Uint8Array(coarse.columns * coarse.rows);
  for (let i = 0; i < mask.length; i++) {
    const at = Math.floor(i / coarse.columns) * COARSE * raster.columns + (i % coarse.columns) * COARSE;
    mask[i] = isMeant(at) ? 1 : 0;
  }
  const far = distancesTo(mask, coarse.columns, coarse.rows);
  const { left, top } = raster;
  return (q) => {
    const cells = far[cellOf(coarse, left + (q.x - left) / COARSE, top + (q.y - top) / COARSE)]!;
    return Math.max(0, COARSE * (cells - 1));
  };
}
