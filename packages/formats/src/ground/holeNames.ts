import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { MapGroup } from './feature.ts';
import type { HoleLine } from './holeLine.ts';
import type { Piece } from './piece.ts';
import { holds, nearest } from './whereNear.ts';

/** A tee or pin this near a line's end may lend it its number. */
const NEAR_END_M = 30;

/** The numbers of a line: its `ref` (several split by ";"), a number in its name, or that of a pin or tee at its ends. */
export function refsOf(piece: Piece, points: readonly GeoPoint[], pieces: readonly Piece[], book: FaultBook): string[] {
  const mapped = (piece.tags.get('ref') ?? '')
    .split(';')
    .map((r) => r.trim())
    .filter((r) => r !== '');
  if (mapped.length > 0)
    return [...new Set(mapped.map((r) => (/^0*\d+$/.test(r) ? String(Number(r)) : r.slice(0, 40))))];
  const inName = /^(?:hole|no\.?|#)?\s*(\d{1,2})$/i.exec(piece.name ?? '')?.[1];
  const [first, last] = [points[0], points.at(-1)];
  const numbered = (kind: 'pin' | 'tee'): Piece[] =>
    pieces.filter((p) => p.meaning.kind === kind && /^\d{1,2}$/.test(p.tags.get('ref') ?? ''));
  const ref =
    inName ??
    (last && nearest(numbered('pin'), last, NEAR_END_M)?.tags.get('ref')) ??
    (first && nearest(numbered('tee'), first, NEAR_END_M)?.tags.get('ref'));
  const done =
    ref === undefined ? 'the hole is called by its id' : `it is taken to be hole ${ref}, by its name, pin or tee`;
  book.add(
    { code: 'no-ref', level: 'note', found: 'a hole line without ref', expected: 'ref=1 to 18', done },
    piece.id,
  );
  return [ref ?? piece.id];
}

/** Names holes apart on a site with several courses; of holes that cannot be told apart the first is kept. */
export function named(
  lines: readonly HoleLine[],
  pieces: readonly Piece[],
  groups: readonly MapGroup[],
  book: FaultBook,
): HoleLine[] {
  const twice = new Set(lines.map((l) => l.ref).filter((ref, i, all) => all.indexOf(ref) !== i));
  if (twice.size === 0) return [...lines];
  const outlines = pieces.filter((p) => p.meaning.kind === 'course' && p.name !== undefined);
  const kept = new Map<string, HoleLine>();
  for (const line of lines) {
    const course = courseOf(line, outlines, groups);
    const hole = course === undefined ? line.ref : `${course} ${line.ref}`;
    if (kept.has(hole))
      book.add(
        {
          code: 'duplicate-ref',
          level: 'left out',
          found: `a second hole ${hole}`,
          expected: 'one hole of each number, or courses to tell them apart',
          done: 'the first is kept',
        },
        line.id,
      );
    else kept.set(hole, { ...line, hole, ...(course === undefined ? {} : { course }) });
  }
  return [...kept.values()];
}

function courseOf(line: HoleLine, outlines: readonly Piece[], groups: readonly MapGroup[]): string | undefined {
  const { tags } = line.piece;
  const said = tags.get('golf:course:name') ?? tags.get('course:name') ?? tags.get('course');
  if (said !== undefined && said !== '') return said;
  const group = groups.find((g) => g.members.includes(line.id));
  if (group) return group.tags.get('name') ?? group.id;
  const [first] = line.points;
  return first && outlines.find((outline) => holds(outline, first))?.name;
}
