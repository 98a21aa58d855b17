import type { HoleLine } from './holeLine.ts';
import type { Piece } from './piece.ts';
import { holds } from './whereNear.ts';

/** The name of the named outline that holds the starts of most hole lines; of the only one when no line lies in any. */
export function courseName(pieces: readonly Piece[], lines: readonly HoleLine[]): string | undefined {
  const outlines = pieces.filter((p) => p.meaning.kind === 'course' && p.name !== undefined);
  let best: { readonly name: string | undefined; readonly starts: number } = { name: undefined, starts: 0 };
  for (const outline of outlines) {
    const starts = lines.filter((l) => l.points[0] && holds(outline, l.points[0])).length;
    if (starts > best.starts) best = { name: outline.name, starts };
  }
  return best.name ?? (outlines.length === 1 ? outlines[0]?.name : undefined);
}
