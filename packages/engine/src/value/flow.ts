import type { HoleGround } from '../ground/hole.ts';
import type { PlayFrame } from './playFrame.ts';

/** The way play goes at a place: the direction of the nearest leg of the hole line, as a unit vector of the play frame. */
export type Flow = (u: number, v: number) => readonly [number, number];

export function flowOf(ground: HoleGround, frame: PlayFrame): Flow {
  const corners = ground.line.length >= 2 ? ground.line : [ground.ball, ground.flag];
  const at = corners.map((p) => [frame.u(p), frame.v(p)] as const);
  const legs = at.slice(1).flatMap(([u1, v1], i) => {
    const [u0, v0] = at[i]!;
    const length = Math.hypot(u1 - u0, v1 - v0);
    return length > 0 ? [{ u0, v0, length, way: [(u1 - u0) / length, (v1 - v0) / length] as const }] : [];
  });
  return (u, v) => {
    let best: readonly [number, number] = [0, 1];
    let least = Infinity;
    for (const leg of legs) {
      const t = Math.min(leg.length, Math.max(0, (u - leg.u0) * leg.way[0] + (v - leg.v0) * leg.way[1]));
      const d = Math.hypot(u - leg.u0 - t * leg.way[0], v - leg.v0 - t * leg.way[1]);
      if (d < least) [best, least] = [leg.way, d];
    }
    return best;
  };
}
