import { widestOf, type Weapon } from './arsenal.ts';
import { Evaluator } from './evaluate.ts';
import type { Field } from './field.ts';
import type { Node } from './lattice.ts';
import { Relief } from './relief.ts';
import { AGAIN, closest, FULL, leadsOf, QUICK, worthTrying } from './search.ts';
import type { SolveStatus } from './solution.ts';

/** A state may cost this much more than the baseline at most; beyond, it is ground that nobody plays from. */
const MOST_OVER_BASELINE = 2.5;
/** A state that moves by more among its leads is looked at from scratch. */
const MOVED_MUCH = 0.02;
/** Far edges of the bands that are worked from the flag outwards; then every 108 m. */
const BANDS_M = [9, 20, 40, 74, 130, 216];
/** How far beyond a band its strokes finish, metres, without water and with drops that go back. */
const OVERSHOOT_M = 40;
const DROPS_BACK_M = 190;
/** Without water, the share of a stroke's balls that may finish in a band farther from the flag than it was played from. */
const PAST_SHARE = 0.4;

/** When to stop: no state moves by more than `tolerance` strokes in a sweep, or after `most` sweeps. */
export interface Patience {
  readonly tolerance: number;
  readonly most: number;
}

export interface Solved {
  readonly status: SolveStatus;
  readonly evaluator: Evaluator;
  readonly relief: Relief | undefined;
}

/**
 * Value iteration from the flag outwards, band by band: a band's states see the new values of all nearer bands. Repeated until no
 * state moves, because misses, drops and lay-ups lead outwards too.
 */
export function solveField(field: Field, patience: Patience): Solved {
  const nodes = field.nodes();
  field.compose(0, Infinity);
  const relief = field.water ? new Relief(field) : undefined;
  relief?.refresh(0, Infinity);
  const evaluator = new Evaluator(field, relief);
  const bands = bandsOf(field, nodes);
  // how much of what a band leads to has moved since the band was last worked
  const stale = bands.map(() => Infinity);
  const reachM = relief === undefined ? OVERSHOOT_M : DROPS_BACK_M;
  let sweeps = 0;
  while (sweeps < patience.most && Math.max(0, ...stale) > patience.tolerance) {
    sweeps++;
    bands.forEach((band, k) => {
      if (stale[k]! <= patience.tolerance / 2) return;
      let moved = 0;
      field.ready(band.widest);
      for (const node of band.nodes) moved = Math.max(moved, improve(field, evaluator, node, sweeps));
      stale[k] = 0;
      bands.forEach((other, j) => {
        if (band.fromM > other.toM + reachM || stale[j] === Infinity) return;
        stale[j] = Math.max(stale[j]!, moved * (relief === undefined && j < k ? PAST_SHARE : 1));
      });
      // what has hardly moved may wait for the next time
      band.owed += moved;
      if (band.owed <= patience.tolerance / 8) return;
      band.owed = 0;
      // a band's lattice reaches into its neighbours, by up to two steps
      const margin = band.toM < 110 ? 8 : band.toM < 216 ? 11 : band.toM < 430 ? 17 : 26;
      field.compose(Math.max(0, band.fromM - margin), band.toM + margin);
      relief?.refresh(Math.max(0, band.fromM - margin), band.toM + margin);
    });
  }
  field.ready();
  const residual = Math.max(0, ...stale);
  const status = {
    states: nodes.length,
    options: field.player.options.length,
    sweeps,
    residual,
    converged: residual <= patience.tolerance,
  };
  return { status, evaluator, relief };
}

/**
 * Sets one state to its cheapest stroke; gives how far it moved. The first sweep looks at everything in range, but quickly; later ones
 * among the strokes that were close to the best, and at everything again only where that moves the state much.
 */
function improve(field: Field, evaluator: Evaluator, node: Node, sweep: number): number {
  const { u, v, mesh, at } = node;
  const base = field.baselineFrom(node.lie, node.distanceM);
  const before = mesh.residual[at]!;
  const fromHere = base + before;
  let strokes = Infinity;
  if (sweep > 1) strokes = closest(evaluator, node.leads, u, v, fromHere, sweep === 2 ? FULL : AGAIN).strokes;
  if (!(Math.abs(strokes - fromHere) <= MOVED_MUCH)) {
    node.leads = leadsOf(evaluator, worthTrying(field.arsenal.get(node.lie)!, node.distanceM), u, v, fromHere);
    strokes = Math.min(strokes, closest(evaluator, node.leads, u, v, fromHere, sweep === 1 ? QUICK : FULL).strokes);
  }
  const after = Math.min(MOST_OVER_BASELINE, strokes - base);
  mesh.residual[at] = after;
  return Math.abs(after - before);
}

interface Band {
  readonly fromM: number;
  readonly toM: number;
  readonly nodes: Node[];
  /** For each run class the widest cloud that its states read. */
  readonly widest: Int8Array;
  /** How far its states have moved since they were last taken into the sheets. */
  owed: number;
}

function bandsOf(field: Field, nodes: readonly Node[]): Band[] {
  const bands: Band[] = [];
  let fromM = 0;
  let k = 0;
  for (let i = 0; i < nodes.length; k++) {
    const toM = k < BANDS_M.length ? BANDS_M[k]! : BANDS_M.at(-1)! + 108 * (k - BANDS_M.length + 1);
    const inside: Node[] = [];
    while (i < nodes.length && nodes[i]!.distanceM <= toM) inside.push(nodes[i++]!);
    const played = new Set<Weapon>();
    for (const { lie, distanceM } of inside) {
      for (const w of worthTrying(field.arsenal.get(lie)!, distanceM)) played.add(w);
    }
    bands.push({ fromM, toM, nodes: inside, widest: widestOf(played, field.classes), owed: 0 });
    fromM = toM;
  }
  return bands;
}
