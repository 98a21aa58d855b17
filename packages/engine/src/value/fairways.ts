import type { Field } from './field.ts';
import { cellAt, FAIRWAY } from './raster.ts';

/** Middles of the squares of a metre that are fairway: u and v of each, one after another. */
export type Fairways = Float64Array;

export function fairwaysOf({ raster, wide }: Field): Fairways {
  const { u0, v0, columns, rows } = wide.grid;
  const { box } = raster;
  const places: number[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const [u, v] = [u0 + c, v0 + r];
      if (u < box.u0 || u > box.u1 || v < box.v0 || v > box.v1) continue;
      if (raster.surface[cellAt(raster, u, v)] === FAIRWAY) places.push(u, v);
    }
  }
  return Float64Array.from(places);
}

/** Places offered between the crossing and the fairway. */
const BETWEEN = 4;

/**
 * Model Local Rule E-5: from where the ball went out or is lost straight to the nearest fairway that is no nearer the flag, and two club-lengths
 * (`intoM`) into it. None without such a fairway.
 */
export function inward(
  fairways: Fairways,
  field: Field,
  u: number,
  v: number,
  intoM: number,
): (readonly [number, number])[] {
  const least = field.distanceM(u, v);
  let [nearest, toU, toV] = [Infinity, 0, 0];
  for (let i = 0; i < fairways.length; i += 2) {
    const [x, y] = [fairways[i]!, fairways[i + 1]!];
    const off = (x - u) ** 2 + (y - v) ** 2;
    if (off < nearest && field.distanceM(x, y) >= least) [nearest, toU, toV] = [off, x, y];
  }
  if (nearest === Infinity) return [];
  const edgeM = Math.sqrt(nearest) || 1;
  const at = (m: number): readonly [number, number] => [u + ((toU - u) * m) / edgeM, v + ((toV - v) * m) / edgeM];
  const line = Array.from({ length: BETWEEN }, (_, k) => at((edgeM * (k + 1)) / BETWEEN));
  return [...line, at(edgeM + intoM)].filter(([x, y]) => field.distanceM(x, y) >= least);
}
