import { disc, onGreen } from '@leeway/engine';
import type { Caution, PlanePoint } from '@leeway/engine';
import type { NearPiece } from './nearHole.ts';
import type { Piece } from './piece.ts';

/** Half the width of the ground round a tee that is mapped as a point only. */
const TEE_POINT_M = 3;

/** What a ball should not reach: other holes' tees and greens, roads, paths, buildings. */
export function cautionsOf(near: readonly NearPiece[], green: Piece, isOwnTee: (n: NearPiece) => boolean): Caution[] {
  const teeAreas = near.filter((n) => n.piece.meaning.kind === 'tee').flatMap((n) => n.polygons);
  return near.flatMap((n): Caution[] => {
    const { id, name, meaning } = n.piece;
    const caution = (kind: Caution['kind'], points: readonly PlanePoint[], closed: boolean): Caution => ({
      id,
      kind,
      ...(name === undefined ? {} : { name }),
      points,
      closed,
    });
    const outlines = (kind: Caution['kind']): Caution[] => n.polygons.map((p) => caution(kind, p.outer, true));
    switch (meaning.kind) {
      case 'green':
        return n.piece === green ? [] : outlines('green');
      case 'tee':
        if (isOwnTee(n)) return [];
        if (n.point === undefined) return outlines('tee');
        return onGreen(n.point, teeAreas) ? [] : [caution('tee', disc(n.point, TEE_POINT_M, 8).outer, true)];
      case 'caution':
        return [...outlines(meaning.caution), ...n.lines.map((l) => caution(meaning.caution, l, false))];
      default:
        return [];
    }
  });
}
