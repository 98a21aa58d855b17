import type { GeoPoint } from '@leeway/engine';
import type { GeoRing } from './feature.ts';

/** Rings made of lines, and the chains that did not close. */
export interface Joined {
  readonly rings: readonly GeoRing[];
  readonly open: readonly (readonly GeoPoint[])[];
}

const key = (p: GeoPoint): string => `${p.lon},${p.lat}`;

/**
 * Joins lines end to end, either way round, until each chain closes. Lines that are closed already are rings as they stand. Ends are
 * the same where their coordinates are, as those of a shared node are.
 */
export function joinToRings(lines: readonly (readonly GeoPoint[])[]): Joined {
  const rings: GeoRing[] = [];
  const open: GeoPoint[][] = [];
  const unused = new Set<readonly GeoPoint[]>();
  const byEnd = new Map<string, (readonly GeoPoint[])[]>();
  for (const line of lines) {
    const [first, last] = [line[0], line[line.length - 1]];
    if (first === undefined || last === undefined || line.length < 2) continue;
    if (key(first) === key(last)) {
      rings.push(line.slice(0, -1));
      continue;
    }
    unused.add(line);
    for (const end of [first, last]) byEnd.set(key(end), [...(byEnd.get(key(end)) ?? []), line]);
  }
  for (const line of lines) {
    if (!unused.delete(line)) continue;
    const chain = [...line];
    for (;;) {
      const [first, last] = [chain[0], chain[chain.length - 1]];
      if (first === undefined || last === undefined) break;
      if (chain.length > 2 && key(first) === key(last)) {
        rings.push(chain.slice(0, -1));
        break;
      }
      const next = byEnd.get(key(last))?.find((l) => unused.has(l));
      if (next === undefined) {
        open.push(chain);
        break;
      }
      unused.delete(next);
      const onward = next[0] !== undefined && key(next[0]) === key(last) ? next : next.toReversed();
      for (const p of onward.slice(1)) chain.push(p);
    }
  }
  return { rings, open };
}
