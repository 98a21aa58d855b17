import { alongLineM, centroid, distanceM, distanceToLineM, lengthM, pointAlong } from '@leeway/engine';
import type { Frame, PlanePoint } from '@leeway/engine';
import type { HoleLine } from './holeLine.ts';
import type { NearPiece } from './nearHole.ts';
import type { Piece } from './piece.ts';

/** A tee farther than this from the first half of every hole line is nobody's. */
const FARTHEST_M = 60;

/**
 * Which hole each tee belongs to: the one with its number, if that comes near; else the one whose line starts nearest, where a
 * place beside the first half of a line counts by its distance from the line and a little for how far along it lies.
 */
export function teeOwners(near: readonly NearPiece[], lines: readonly HoleLine[], frame: Frame): Map<Piece, HoleLine> {
  const owners = new Map<Piece, HoleLine>();
  const planes = lines.map((line) => ({ line, plane: line.points.map(frame.toPlane) }));
  for (const n of near) {
    if (n.piece.meaning.kind !== 'tee') continue;
    const [polygon] = n.polygons;
    const at: PlanePoint | undefined = n.point ?? (polygon && centroid(polygon.outer));
    if (at === undefined) continue;
    const ref = n.piece.tags.get('ref');
    let best: { readonly line: HoleLine; readonly costM: number } | undefined;
    for (const { line, plane } of planes) {
      const costM = startCostM(at, plane) - (ref !== undefined && ref === line.ref ? FARTHEST_M : 0);
      if (costM <= FARTHEST_M && costM < (best?.costM ?? Infinity)) best = { line, costM };
    }
    if (best) owners.set(n.piece, best.line);
  }
  return owners;
}

function startCostM(at: PlanePoint, plane: readonly PlanePoint[]): number {
  const alongM = Math.min(alongLineM(at, plane), lengthM(plane) / 2);
  const beside = pointAlong(plane, alongM);
  if (!beside) return Infinity;
  return Math.max(distanceM(at, beside), distanceToLineM(at, plane)) + alongM / 10;
}
