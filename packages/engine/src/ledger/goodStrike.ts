import type { NormalPart } from '../player/option.ts';

/** A part of the pattern whose mean is as long as this share of the good strike's is a good strike too: skew is told by several parts. */
const GOOD_SHARE = 0.88;

/** Which parts of a pattern are good strikes; its first part is one. */
export function goodOf(parts: readonly NormalPart[]): (p: NormalPart) => boolean {
  const along = parts[0]?.alongM ?? 0;
  return (p) => Math.abs(p.alongM - along) <= (1 - GOOD_SHARE) * Math.abs(along);
}
