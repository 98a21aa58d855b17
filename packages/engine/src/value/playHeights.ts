import { heightOn, type Heights } from '../ground/heights.ts';
import type { HeightAt } from '../reach/patternToday.ts';
import type { PlayFrame } from './playFrame.ts';
import type { Box } from './raster.ts';

const STEP_M = 5;
/** Ground that differs by less than this is played as level. */
const LEVEL_M = 0.25;

/** Heights in the play frame over a box, straight between the nodes of a mesh and held at its edge, and the greatest difference; `undefined` for level ground. */
export function playHeights(
  heights: Heights,
  frame: PlayFrame,
  { u0, u1, v0, v1 }: Box,
): { readonly heightAt: HeightAt; readonly climbM: number } | undefined {
  const columns = Math.max(2, Math.ceil((u1 - u0) / STEP_M) + 1);
  const rows = Math.max(2, Math.ceil((v1 - v0) / STEP_M) + 1);
  const mesh = Float64Array.from({ length: columns * rows }, (_, k) => {
    const p = frame.toPlane(u0 + (k % columns) * STEP_M, v0 + Math.floor(k / columns) * STEP_M);
    return heightOn(heights, p.eastM, p.northM);
  });
  const [least, most] = [mesh.reduce((a, b) => Math.min(a, b)), mesh.reduce((a, b) => Math.max(a, b))];
  if (most - least < LEVEL_M) return undefined;
  const heightAt: HeightAt = (u, v) => {
    const x = Math.min(columns - 1, Math.max(0, (u - u0) / STEP_M));
    const y = Math.min(rows - 1, Math.max(0, (v - v0) / STEP_M));
    const i = Math.min(columns - 2, x | 0);
    const j = Math.min(rows - 2, y | 0);
    const at = j * columns + i;
    const low = mesh[at]! + (x - i) * (mesh[at + 1]! - mesh[at]!);
    const high = mesh[at + columns]! + (x - i) * (mesh[at + columns + 1]! - mesh[at + columns]!);
    return low + (y - j) * (high - low);
  };
  return { heightAt, climbM: most - least };
}
