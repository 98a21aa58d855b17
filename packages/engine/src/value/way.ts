import type { Lead } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import type { Node } from './lattice.ts';
import type { BallState, Stroke } from './solution.ts';

/**
 * A way of playing: from each state the strokes that may be played, of which the cheapest is; `undefined` where it leaves the choice free. The whole
 * hole is played so, shot after shot: its value is what the way costs, not what one departure from the best does.
 */
export type Way = (from: BallState) => readonly Stroke[] | undefined;

/** Sets a state to the cheapest of the strokes that a way allows there, always played from it; gives its cost. */
export function held(evaluator: Evaluator, node: Node, allowed: readonly Lead[], fromHere: number): number {
  let best: Lead | undefined;
  for (const lead of allowed) {
    lead.strokes = evaluator.always(lead.weapon, lead.weapon.fine, node.u, node.v, lead.bearing, fromHere);
    if (best === undefined || lead.strokes < best.strokes) best = lead;
  }
  node.leads = allowed;
  node.best = best;
  return best?.strokes ?? Infinity;
}
