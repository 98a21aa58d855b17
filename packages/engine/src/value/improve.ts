import type { Lead } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import type { Field } from './field.ts';
import type { Node } from './lattice.ts';
import { AGAIN, closest, FULL, leadsBeside, leadsOf, QUICK, TURNED, worthTryingFrom, type Effort } from './search.ts';
import { mayBeUnplayable, unplayable } from './unplayable.ts';
import { held } from './way.ts';

/** A state may cost this much more than the baseline at most; beyond, it is ground that nobody plays from. */
const MOST_OVER_BASELINE = 2.5;
/** The same for a state that a way of playing leaves no choice: some ways are dear. */
const MOST_HELD = 8;
/** A state whose best stroke costs what it did, give or take so much, keeps it; one that moves by more among its leads is looked at from scratch. */
const STEADY = 0.002;
/** The same while a flag is followed, for states far from it: their strokes have turned with the flag, and the last of a stroke's cost is not sought. */
const STEADY_FAR = 0.03;
const MOVED_MUCH = 0.02;
/** The same for states far from a flag that has been moved. */
const MOVED_FAR = 0.06;
/** A state that is dearer, over the baseline, than all those beside it by more than this is looked at from scratch too. */
const DEARER = 0.008;
/** After the flag has been moved, states as near as this are looked at from scratch; those farther out among the strokes they know. */
export const WIDE_M = 60;

/**
 * How hard a sweep looks: at everything; at everything near a flag that has been moved; among the strokes known near a flag that has hardly
 * moved; among known strokes; among those again.
 */
export type Look = 'open' | 'moved' | 'followed' | 'known' | 'again';

/** How hard each look tries the leads that it knows. */
const EFFORTS: Readonly<Record<Look, Effort>> = {
  open: QUICK,
  moved: TURNED,
  followed: TURNED,
  known: FULL,
  again: AGAIN,
};

/**
 * Sets one state to its cheapest stroke; gives how far it moved. The first sweep looks at everything in range, but quickly; later ones
 * at the best stroke, among those that were close to it if that has moved, and at everything again where that moves the state much.
 */
export function improve(
  field: Field,
  evaluator: Evaluator,
  node: Node,
  look: Look,
  heldTo: ReadonlyMap<Node, readonly Lead[]>,
): number {
  const { u, v, mesh, at, distanceM } = node;
  const base = field.baselineFrom(node.lie, distanceM);
  const before = mesh.residual[at]!;
  const fromHere = base + before;
  const allowed = heldTo.get(node);
  if (allowed !== undefined) return settle(field, node, base, held(evaluator, node, allowed, fromHere), MOST_HELD);
  let strokes = Infinity;
  const wide = look === 'open' || (look === 'moved' && distanceM <= WIDE_M);
  if (node.best !== undefined) {
    const { weapon, bearing } = node.best;
    strokes = evaluator.always(weapon, weapon.fine, u, v, bearing, fromHere);
    const steady = look === 'followed' ? (distanceM > WIDE_M ? STEADY_FAR : 0.01) : STEADY;
    if (!wide && Math.abs(strokes - fromHere) > steady) {
      node.best = closest(evaluator, node.leads, u, v, fromHere, EFFORTS[look]);
      strokes = node.best.strokes;
    }
  }
  const take = (leads: readonly Lead[], effort: Effort): void => {
    const found = closest(evaluator, leads, u, v, fromHere, effort);
    if (found.strokes >= strokes && node.leads.length > 0) return;
    node.leads = leads;
    node.best = found;
    strokes = found.strokes;
  };
  const free = heldTo.size === 0 || !node.beside.some((other) => heldTo.has(other));
  const beside = wide && free ? leadsBeside(evaluator, node.beside, u, v) : [];
  if (beside.length > 0) take(beside, QUICK);
  const dearest = beside.length > 0 ? dearestOf(node.beside) + DEARER : wide ? -Infinity : Infinity;
  const movedMuch = !(
    Math.abs(strokes - fromHere) <= (look === 'moved' || look === 'followed' ? MOVED_FAR : MOVED_MUCH)
  );
  if (strokes - base > dearest || (!wide && movedMuch)) {
    const weapons = worthTryingFrom(field, node.lie, distanceM, field.bearingToFlag(u, v));
    take(leadsOf(evaluator, weapons, u, v, fromHere), wide ? QUICK : FULL);
  }
  return settle(field, node, base, strokes, MOST_OVER_BASELINE);
}

/** Sets one state to what its stroke costs, or to the relief of Rule 19 where that is cheaper; gives how far it moved. */
function settle(field: Field, node: Node, base: number, played: number, mostOver: number): number {
  const { u, v, mesh, at } = node;
  const before = mesh.residual[at]!;
  let strokes = played;
  if (mayBeUnplayable(field, node.lie, u, v, strokes)) {
    const dropped = unplayable(field, node.lie, u, v);
    if (dropped !== undefined) strokes = Math.min(strokes, dropped.penaltyStrokes + dropped.strokes);
  }
  const after = Math.min(mostOver, strokes - base);
  mesh.residual[at] = after;
  node.owed += Math.abs(after - before);
  return Math.abs(after - before);
}

/** The most that any of these states costs over the baseline. */
const dearestOf = (nodes: readonly Node[]): number =>
  nodes.reduce((most, { mesh, at }) => Math.max(most, mesh.residual[at]!), -Infinity);
