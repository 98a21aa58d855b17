import { widestOf, type Weapon } from './arsenal.ts';
import type { Field } from './field.ts';
import type { Node } from './lattice.ts';
import { worthTryingFrom } from './search.ts';

/** Far edges of the bands that are worked from the flag outwards; then every 108 m. */
const BANDS_M = [9, 20, 40, 74, 130, 216];

/** The states between two distances from the flag. */
export interface Band {
  readonly fromM: number;
  readonly toM: number;
  readonly nodes: readonly Node[];
  /** For each run class the widest cloud that its states read. */
  readonly widest: Int8Array;
  /** How much of what it leads to has moved since it was last worked. */
  stale: number;
}

/** The bands about the flag where the field has it, of states that know how far from it they are, nearest first. */
export function bandsOf(field: Field, nodes: readonly Node[]): Band[] {
  const bands: Band[] = [];
  let fromM = 0;
  let k = 0;
  for (let i = 0; i < nodes.length; k++) {
    const toM = k < BANDS_M.length ? BANDS_M[k]! : BANDS_M.at(-1)! + 108 * (k - BANDS_M.length + 1);
    const inside: Node[] = [];
    while (i < nodes.length && nodes[i]!.distanceM <= toM) inside.push(nodes[i++]!);
    // those that others ask come first
    inside.sort((a, b) => Math.min(1, a.beside.length) - Math.min(1, b.beside.length));
    const played = new Set<Weapon>();
    for (const { lie, distanceM, u, v } of inside) {
      for (const w of worthTryingFrom(field, lie, distanceM, field.bearingToFlag(u, v))) played.add(w);
    }
    bands.push({ fromM, toM, nodes: inside, widest: widestOf(played, field.classes), stale: Infinity });
    fromM = toM;
  }
  return bands;
}
