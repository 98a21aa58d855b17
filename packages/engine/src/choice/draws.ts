import { normalQuantile } from '../math/normal.ts';
import { randomFrom } from '../math/random.ts';
import type { Nudge } from './nudge.ts';

const DRAWS = 400;
const QUANTILES = Float64Array.from({ length: DRAWS }, (_, i) => normalQuantile((i + 0.5) / DRAWS));

/** A number from a name (the FNV-1a hash, mixed), the same wherever it is asked. */
function seedOf(name: string): number {
  let seed = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) seed = Math.imul(seed ^ name.charCodeAt(i), 0x01000193);
  seed = Math.imul(seed ^ (seed >>> 16), 0x85ebca6b);
  return (seed ^ (seed >>> 13)) >>> 1;
}

/** Standard normal draws of a parameter, one a common draw: a stratified sample in an order of the parameter's own. */
function drawsOf(key: string): Float64Array {
  const random = randomFrom(seedOf(key));
  const draws = QUANTILES.slice();
  for (let i = draws.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [draws[i], draws[j]] = [draws[j]!, draws[i]!];
  }
  return draws;
}

/**
 * A figure in each of the common draws of all patterns: from its value at the patterns' means by slope and bend in every parameter. Figures that
 * share a parameter meet the same draws of it.
 */
export function inDraws(strokes: number, nudges: readonly Nudge[]): Float64Array {
  const figure = new Float64Array(DRAWS).fill(strokes);
  const byKey = new Map<string, { slope: number; bend: number }>();
  for (const n of nudges) {
    const known = byKey.get(n.key) ?? { slope: 0, bend: 0 };
    byKey.set(n.key, { slope: known.slope + n.strokes, bend: known.bend + (n.bend ?? 0) });
  }
  for (const [key, { slope, bend }] of byKey) {
    drawsOf(key).forEach((z, i) => (figure[i]! += z * (slope + z * bend)));
  }
  return figure;
}
