import type { Lead } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import type { Field } from './field.ts';
import type { Node } from './lattice.ts';
import { FAIRWAY, TEE } from './raster.ts';
import { AGAIN, closest, leadsBeside, leadsOf, worthTryingFrom, type Found } from './search.ts';

/** Strokes are remembered for squares of this side near the flag and farther out, and turn with the line to the flag inside them. */
const NEAR_CELL_M = 1;
const FAR_CELL_M = 2;
const NEAR_M = 40;
/** States of the mesh beside a place whose strokes are tried there. */
const BESIDE = 2;
/** V where no mesh tells it. */
const NO_MESH_STROKES = 6;

/**
 * What is played from everywhere: near each place the strokes of the mesh's states are tried again, and the best of them is remembered. What a way of
 * playing allows is tried where it allows anything.
 */
export class Policy {
  private readonly field: Field;
  private readonly evaluator: Evaluator;
  private readonly allowed: ((lie: number, u: number, v: number) => readonly Lead[] | undefined) | undefined;
  private readonly byLie = new Map<number, Node[]>();
  private readonly known = new Map<number, Found>();

  constructor(
    field: Field,
    evaluator: Evaluator,
    states: readonly Node[],
    allowed?: (lie: number, u: number, v: number) => readonly Lead[] | undefined,
  ) {
    this.field = field;
    this.evaluator = evaluator;
    this.allowed = allowed;
    for (const node of states) {
      const nodes = this.byLie.get(node.lie);
      if (nodes === undefined) this.byLie.set(node.lie, [node]);
      else nodes.push(node);
    }
  }

  /** The stroke from a place; `undefined` where nothing is played from the lie. */
  at(lie: number, u: number, v: number): Found | undefined {
    const cellM = this.field.distanceM(u, v) < NEAR_M ? NEAR_CELL_M : FAR_CELL_M;
    const [column, row] = [Math.round(u / cellM), Math.round(v / cellM)];
    const key = ((lie * 2 + (cellM === NEAR_CELL_M ? 1 : 0)) * 8192 + row + 4096) * 8192 + column + 4096;
    let found = this.known.get(key);
    if (found === undefined) {
      found = this.find(lie, column * cellM, row * cellM);
      if (found === undefined) return undefined;
      this.known.set(key, found);
    }
    const turn = this.field.bearingToFlag(u, v) - this.field.bearingToFlag(column * cellM, row * cellM);
    const exact = this.allowed?.(lie, u, v)?.find(({ weapon }) => weapon === found.weapon);
    return exact ?? { weapon: found.weapon, bearing: found.bearing + turn, strokes: found.strokes };
  }

  private find(lie: number, u: number, v: number): Found | undefined {
    const { field, evaluator } = this;
    // a tee has no mesh of its own
    const known = field.strokesFrom(lie === TEE ? FAIRWAY : lie, u, v);
    const strokes = Number.isNaN(known) ? NO_MESH_STROKES : known;
    const only = this.allowed?.(lie, u, v);
    if (only !== undefined && only.length > 0) {
      const cost = ({ weapon, bearing }: Lead): number => evaluator.always(weapon, weapon.fine, u, v, bearing, strokes);
      return only.map((lead) => ({ ...lead, strokes: cost(lead) })).reduce((a, b) => (b.strokes < a.strokes ? b : a));
    }
    const leads = leadsBeside(evaluator, this.nearest(lie, u, v), u, v);
    const more =
      leads.length > 0
        ? leads
        : leadsOf(
            evaluator,
            worthTryingFrom(field, lie, field.distanceM(u, v), field.bearingToFlag(u, v)),
            u,
            v,
            strokes,
          );
    return more.length === 0 ? undefined : closest(evaluator, more, u, v, strokes, AGAIN);
  }

  private nearest(lie: number, u: number, v: number): Node[] {
    const off = (n: Node): number => (n.u - u) ** 2 + (n.v - v) ** 2;
    const nearest: Node[] = [];
    for (const node of this.byLie.get(lie) ?? []) {
      if (nearest.length === BESIDE && off(node) >= off(nearest.at(-1)!)) continue;
      nearest.push(node);
      nearest.sort((a, b) => off(a) - off(b));
      nearest.length = Math.min(nearest.length, BESIDE);
    }
    return nearest;
  }
}
