import { calibrate, type Conditions } from './calibrate.ts';
import { type FlightTag, measuredFamily } from './family.ts';
import type { Launch } from './launch.ts';
import { familiesOf } from './variants.ts';

/**
 * What is known of how a swing's ball leaves, best first: the whole launch (with a carry, its speed is set to that carry), the ball's speed
 * and the club's loft, or a carry and the loft. A tag tells how high the ball flies against players of the same speed.
 */
export type SwingKnown =
  | { readonly launch: Launch; readonly loftDeg: number; readonly carryM?: number }
  | { readonly speedMps: number; readonly loftDeg: number; readonly tag?: FlightTag }
  | { readonly carryM: number; readonly loftDeg: number; readonly tag?: FlightTag };

/**
 * The launches that agree with what is known, the central one first: one for a measured launch, nine where launch and spin are open, less
 * those that cannot have the carry. A carry was measured in the conditions `where`. None when the central one cannot have it.
 */
export function launchesKnown(known: SwingKnown, where: Conditions): readonly Launch[] {
  if ('launch' in known && known.carryM === undefined) return [known.launch];
  const families = 'launch' in known ? [measuredFamily(known.launch)] : familiesOf(known.loftDeg, known.tag);
  if ('speedMps' in known) return families.map((family) => family(known.speedMps));
  const { carryM = 0, loftDeg } = known;
  const found = families.map((family) => calibrate(family, carryM, loftDeg, where));
  if (found[0]?.status !== 'found') return [];
  return found.flatMap((f) => (f.status === 'found' ? [f.launch] : []));
}
